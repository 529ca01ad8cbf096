/** How far the canvas reaches about the field's centre. */
import type { StageLayout } from "./view.ts";

/** CSS px from the centre of the field to the canvas's sides. */
export interface Reach {
  readonly left: number;
  readonly right: number;
  readonly up: number;
  readonly down: number;
}

export const squareReach = (px: number): Reach => ({ left: px, right: px, up: px, down: px });

/** Size of the canvas, device px. */
export const widthPxOf = ({ reachCssPx: { left, right }, devicePixelRatio }: StageLayout): number =>
  Math.round((left + right) * devicePixelRatio);
export const heightPxOf = ({ reachCssPx: { up, down }, devicePixelRatio }: StageLayout): number =>
  Math.round((up + down) * devicePixelRatio);
