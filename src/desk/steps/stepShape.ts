/** Where the strokes of a step sign lie: a ring that is the field, and in it, or out of it, the way to the next mark. */

export interface Push {
  /** To the right and up as the image shows it, radii of the field. */
  readonly right: number;
  readonly up: number;
}
export interface StepShape {
  readonly ring: { readonly x: number; readonly y: number; readonly radiusPx: number };
  readonly tip: { readonly x: number; readonly y: number };
  /** Length and direction of the arrow's head; null where the way is too short for one. */
  readonly head: string | null;
}

const EDGE_PX = 1.5;
const HEAD = { longPx: 5, halfPx: 2.8 } as const;
/** A way shorter than this is a dot: one is there. */
const LEAST_PX = 1;

/**
 * Fits ring and arrow into a square, both to one scale: a way longer than half a field makes the ring smaller, never the
 * arrow shorter than it is.
 * @param sizePx side of the square
 */
export function stepShape({ right, up }: Push, sizePx: number): StepShape {
  const [least, most] = [Math.min(-1, right), Math.max(1, right)];
  const [lowest, highest] = [Math.min(-1, up), Math.max(1, up)];
  const radiusPx = (sizePx - 2 * EDGE_PX) / Math.max(most - least, highest - lowest);
  const ring = {
    x: sizePx / 2 - ((most + least) / 2) * radiusPx,
    y: sizePx / 2 + ((highest + lowest) / 2) * radiusPx,
    radiusPx,
  };
  const tip = { x: ring.x + right * radiusPx, y: ring.y - up * radiusPx };
  return { ring, tip, head: headOf(ring, tip) };
}

function headOf(from: StepShape["tip"], tip: StepShape["tip"]): string | null {
  const [x, y] = [tip.x - from.x, tip.y - from.y];
  const long = Math.hypot(x, y);
  if (long < LEAST_PX) return null;
  const back = Math.min(HEAD.longPx, long * 0.55) / long;
  const side = (back * HEAD.halfPx) / HEAD.longPx;
  const at = (sign: 1 | -1) =>
    `${(tip.x - x * back - sign * y * side).toFixed(1)} ${(tip.y - y * back + sign * x * side).toFixed(1)}`;
  return `M${at(1)}L${tip.x.toFixed(1)} ${tip.y.toFixed(1)}L${at(-1)}`;
}
