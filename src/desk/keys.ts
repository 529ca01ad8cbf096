/** One table of keys feeds the handler, the help and the manual. */

export type KeyAct =
  | "push"
  | "fine"
  | "wider"
  | "narrower"
  | "confirm"
  | "claim"
  | "notSeen"
  | "home"
  | "flip"
  | "turnLeft"
  | "turnRight"
  | "closer"
  | "further"
  | "pin"
  | "avert"
  | "stare"
  | "hint"
  | "later"
  | "earlier"
  | "skyTurns"
  | "screws"
  | "sheet"
  | "find"
  | "lamp"
  | "sound"
  | "help";

export interface KeyRow {
  readonly act: KeyAct;
  /** Values of KeyboardEvent.key, letters in lower case. */
  readonly keys: readonly string[];
  readonly shift: boolean;
  /** How the key is written. */
  readonly shown: string;
}

const ARROWS = ["ArrowLeft", "ArrowRight", "ArrowUp", "ArrowDown"] as const;
const row = (act: KeyAct, keys: readonly string[], shown: string, shift = false): KeyRow => ({
  act,
  keys,
  shift,
  shown,
});

export const KEY_TABLE: readonly KeyRow[] = [
  row("push", ARROWS, "← → ↑ ↓"),
  row("fine", ARROWS, "Shift ← → ↑ ↓", true),
  row("wider", ["w"], "W"),
  row("narrower", ["n"], "N"),
  row("confirm", ["c"], "C"),
  row("claim", ["Enter"], "Enter"),
  row("notSeen", ["Enter"], "Shift Enter", true),
  row("home", ["b"], "B"),
  row("flip", ["f"], "F"),
  row("turnLeft", [","], ","),
  row("turnRight", ["."], "."),
  row("closer", ["x"], "X"),
  row("further", ["y"], "Y"),
  row("avert", ["v"], "V"),
  row("stare", ["g"], "G"),
  row("pin", ["p"], "P"),
  row("hint", ["h"], "H"),
  row("later", ["t"], "T"),
  row("earlier", ["t"], "Shift T", true),
  row("skyTurns", ["z"], "Z"),
  row("screws", ["a"], "A"),
  row("sheet", ["s"], "S"),
  row("find", ["/"], "/"),
  row("lamp", ["r"], "R"),
  row("sound", ["m"], "M"),
  row("help", ["k", "?"], "K"),
];

/** What a key press means, or null. Presses with Ctrl, Alt or Meta are the browser's. */
export function actOfKey(
  event: Pick<KeyboardEvent, "key" | "shiftKey" | "ctrlKey" | "altKey" | "metaKey">,
): KeyAct | null {
  if (event.ctrlKey || event.altKey || event.metaKey) return null;
  const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
  const rows = KEY_TABLE.filter(({ keys }) => keys.includes(key));
  const exact = rows.find(({ shift }) => shift === event.shiftKey);
  return (exact ?? (event.key.length === 1 ? rows[0] : undefined))?.act ?? null;
}
