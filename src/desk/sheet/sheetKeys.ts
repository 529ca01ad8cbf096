/** What keys mean while the sheet has the focus: the page's table, and what only the paper knows. */
import { actOfKey } from "../keys.ts";
import type { SheetMode } from "./types.ts";

export type SheetKeyAct =
  | { readonly kind: "turn"; readonly byDeg: number }
  | { readonly kind: "flip" }
  | { readonly kind: "zoom"; readonly factor: number }
  | { readonly kind: "pan"; readonly right: number; readonly down: number }
  | { readonly kind: "cross"; readonly right: number; readonly down: number; readonly far: boolean }
  | { readonly kind: "set" }
  | { readonly kind: "rubOut" }
  | { readonly kind: "mode"; readonly mode: SheetMode };
type Press = Pick<KeyboardEvent, "key" | "shiftKey" | "ctrlKey" | "altKey" | "metaKey" | "repeat">;

const TURN_DEG = 5;
const ZOOM = 1.5;
const ARROWS: Readonly<Record<string, readonly [right: number, down: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};
const BY_TABLE = {
  flip: { kind: "flip" },
  turnLeft: { kind: "turn", byDeg: -TURN_DEG },
  turnRight: { kind: "turn", byDeg: TURN_DEG },
  closer: { kind: "zoom", factor: ZOOM },
  further: { kind: "zoom", factor: 1 / ZOOM },
} as const;
const BY_KEY: Readonly<Record<string, SheetKeyAct>> = {
  "+": { kind: "zoom", factor: ZOOM },
  "=": { kind: "zoom", factor: ZOOM },
  "-": { kind: "zoom", factor: 1 / ZOOM },
};
const sets = (mode: SheetMode) => mode === "pin" || mode === "pencil" || mode === "ruler";

/** The act of a key, or null where the sheet has no use for it. */
export function sheetActOfKey(press: Press, mode: SheetMode, canPan: boolean): SheetKeyAct | null {
  if (press.ctrlKey || press.altKey || press.metaKey) return null;
  const arrow = ARROWS[press.key];
  if (arrow) {
    const [right, down] = arrow;
    if (press.shiftKey) return { kind: "turn", byDeg: (right || down) * TURN_DEG };
    if (sets(mode)) return { kind: "cross", right, down, far: press.repeat };
    return canPan ? { kind: "pan", right, down } : null;
  }
  if (sets(mode)) {
    if (press.key === "Enter" || press.key === " ") return { kind: "set" };
    if (press.key === "Escape") return { kind: "mode", mode: "turn" };
    if (press.key === "Backspace" && mode === "pencil") return { kind: "rubOut" };
  }
  const act = actOfKey(press);
  if (act && act in BY_TABLE) return BY_TABLE[act as keyof typeof BY_TABLE];
  if (act === "pin") return { kind: "mode", mode: mode === "pin" ? "turn" : "pin" };
  return BY_KEY[press.key] ?? null;
}
