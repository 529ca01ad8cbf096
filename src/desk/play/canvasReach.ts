/** How far the field's canvas reaches over the table. */
import type { Reach } from "../../stage/index.ts";
import { SPILL_CSS_PX, squareReach } from "../../stage/reach.ts";
import type { PlayLayout } from "./geometry.ts";

/** The canvas reaches so far beyond the field stop: every pixel more is drawn and laid on the page in each frame. */
const ROOM_PX = 2;

/** A side between the field's centre and an edge that stands still: whole px to it, so that no pixel is drawn across two. */
const sideTo = (edgePx: number, mostPx: number): number => edgePx - Math.ceil(Math.max(0, edgePx - mostPx));

/**
 * Where the eye has no wall about it: on past the rim, to the window's sides, and not under what is read.
 * @param width @param height of the window, CSS px
 */
export function openReach({ kind, barrel, words }: PlayLayout, width: number, height: number): Reach {
  const { x, y, fieldPx, rimPx } = barrel;
  const outer = fieldPx + rimPx;
  const most = outer + SPILL_CSS_PX;
  const wordsAtRight = kind === "column" || kind === "lying";
  const wordsBelow = kind === "phone" || kind === "tall";
  const left = sideTo(x, most);
  const up = sideTo(y, most);
  const right = Math.min(x + most, wordsAtRight ? words.x - 8 : width);
  const down = Math.min(y + most, wordsBelow ? y + outer + 2 : height);
  return { left, up, right: Math.floor(right - x + left) - left, down: Math.floor(down - y + up) - up };
}

/** Gives the same object as long as nothing changes. */
export function createCanvasReach(): (fieldPx: number, opensPx: number, open: Reach | null) => Reach {
  let square = squareReach(0);
  return (fieldPx, opensPx, open) => {
    if (open) return open;
    const half = fieldPx + ROOM_PX + opensPx;
    if (square.left !== half) square = squareReach(half);
    return square;
  };
}
