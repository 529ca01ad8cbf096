/** How far the canvas reaches about the field's centre. */
import type { Reach, StageLayout } from "./view.ts";

/** So far beyond the rim the sky is gone where the eye has no wall about it, CSS px. */
export const SPILL_CSS_PX = 250;

export const squareReach = (px: number): Reach => ({ left: px, right: px, up: px, down: px });

/** Size of the canvas, device px. */
export const widthPxOf = ({ reachCssPx: { left, right }, devicePixelRatio }: StageLayout): number =>
  Math.round((left + right) * devicePixelRatio);
export const heightPxOf = ({ reachCssPx: { up, down }, devicePixelRatio }: StageLayout): number =>
  Math.round((up + down) * devicePixelRatio);

/** The canvas holds an instrument's field and no rim: then it is round, and the page's own rim stands about it. */
export const isFieldAlone = ({
  reachCssPx: { left, right, up, down },
  fieldRadiusCssPx,
  rimCssPx,
}: StageLayout): boolean => left === right && left === up && left === down && left < fieldRadiusCssPx + rimCssPx / 3;
