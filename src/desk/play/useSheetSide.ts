/** Keeps the words beside the sheet off the paper: looked at anew whenever it has come to rest. */
import { useSignal } from "@preact/signals";
import type { RefObject } from "preact";
import { useEffect } from "preact/hooks";
import type { PlayLayout } from "./geometry.ts";
import type { PlayModel } from "./model.ts";
import { freeSide, type Lying, type Side, type SideRoom } from "./sheetSide.ts";

/** The paper has come to rest, and its words are told. */
const RESTED_MS = 260;
/** Places of the drawing of 1440 x 900. */
const DRAWN = { leftX: 892, leftBottom: 588, rightX: 1410, rightBottom: 596, narrowPx: [190, 125] } as const;

function lyingOf(paper: HTMLElement): Lying {
  const box = paper.offsetParent?.getBoundingClientRect() ?? paper.getBoundingClientRect();
  // As it comes to lie, not as far as its motion has come.
  const { translate, rotate } = paper.style;
  const [dx = 0, dy = 0] = translate.split(" ").map((part) => Number.parseFloat(part) || 0);
  const turnRad = Number.parseFloat(rotate) || 0;
  const { offsetWidth: width, offsetHeight: height } = paper;
  return { x: box.left + width / 2 + dx, y: box.top + height / 2 + dy, width, height, turnRad };
}

function roomOf(side: HTMLElement, { scale, type, barrel }: PlayLayout): SideRoom {
  const range = document.createRange();
  const said = side.querySelector(".sheet-lies, .sheet-asks");
  if (said) range.selectNodeContents(said);
  const lines = said ? Array.from(range.getClientRects()) : [];
  const tools = Array.from(side.querySelectorAll(".tool"), (tool) => tool.getBoundingClientRect());
  const at = (x: number, y: number) => ({ x: barrel.x + (x - 452) * scale, bottom: barrel.y + (y - 450) * scale });
  return {
    words: {
      width: lines.reduce((sum, { width }) => sum + width, 0),
      height: Math.max(0, ...lines.map(({ height }) => height)),
    },
    tools: {
      width: Math.max(...tools.map(({ right }) => right)) - Math.min(...tools.map(({ left }) => left)),
      height: Math.max(0, ...tools.map(({ height }) => height)),
    },
    left: at(DRAWN.leftX, DRAWN.leftBottom),
    right: at(DRAWN.rightX, DRAWN.rightBottom),
    narrowPx: [DRAWN.narrowPx[0] * type, DRAWN.narrowPx[1] * type],
  };
}

/** Where the words and tools lie that stand in an element beside the sheet. */
export function useSheetSide(side: RefObject<HTMLElement | null>, model: PlayModel, layout: PlayLayout): Side {
  const chosen = useSignal<Side>({ atLeft: false, lines: 1 });
  const view = model.sheetView.value;
  useEffect(() => {
    const timer = setTimeout(() => {
      const paper = document.querySelector<HTMLElement>("#sheet-place .sheet-paper");
      if (!paper || !side.current) return;
      const next = freeSide(lyingOf(paper), roomOf(side.current, layout));
      const { atLeft, lines } = chosen.peek();
      if (next.atLeft !== atLeft || next.lines !== lines) chosen.value = next;
    }, RESTED_MS);
    return () => clearTimeout(timer);
  }, [view, model.phase.value, model.ring.value, model.agrees.value, layout.scale, layout.barrel.x]);
  return chosen.value;
}
