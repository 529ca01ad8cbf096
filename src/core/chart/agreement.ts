/** Whether the sheet lies as the field shows the sky: the same side up, and turned alike. */
import { DEG, offsetDir } from "#core/celestial/vector.ts";
import type { Dir, Mat3 } from "#core/seams/index.ts";
import { type ChartPage, projectionOf } from "./page.ts";
import type { SheetView } from "./sheetView.ts";

export const AGREES_WITHIN_RAD = 3 * DEG;
/** Half the way over which north is read off the page; both halves together take its curve out. */
const STEP_RAD = 1e-4;

/** An angle brought to (-pi, pi]. */
export function wrappedRad(angleRad: number): number {
  const turn = angleRad - 2 * Math.PI * Math.round(angleRad / (2 * Math.PI));
  return turn <= -Math.PI ? turn + 2 * Math.PI : turn;
}

/** Where north is at a place of the page, north up: clockwise from the top of the paper, radians. */
export function northOnPage(page: ChartPage, at: Dir): number {
  const { project } = projectionOf(page);
  const [south, north] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  project(offsetDir(at, Math.PI, STEP_RAD), south);
  project(offsetDir(at, 0, STEP_RAD), north);
  return Math.atan2(north.x - south.x, south.y - north.y);
}

/**
 * The side and the turn at which the sheet agrees with a view: about the pointing every star stands in the same direction
 * on both. A mirrored image wants the sheet from behind.
 * @param viewFromIcrs rotation ICRS -> view, row-major; rows are right, up and forward of the picture
 */
export function agreeingView(page: ChartPage, viewFromIcrs: Mat3): Pick<SheetView, "turnRad" | "flipped"> {
  const m = Array.from({ length: 9 }, (_, i) => viewFromIcrs[i]!) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const pointing: Dir = [m[6], m[7], m[8]];
  const ahead = offsetDir(pointing, 0, STEP_RAD);
  const northInView = Math.atan2(
    m[0] * ahead[0] + m[1] * ahead[1] + m[2] * ahead[2],
    m[3] * ahead[0] + m[4] * ahead[1] + m[5] * ahead[2],
  );
  // Right, up and forward of the unmirrored picture are a left-handed set.
  const determinant =
    m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6]);
  const flipped = determinant > 0;
  const onPaper = northOnPage(page, pointing);
  return { flipped, turnRad: wrappedRad(northInView - (flipped ? -onPaper : onPaper)) };
}

/** How far a sheet is from agreeing: the side, the turn that is left (clockwise), and whether that will do. */
export function agreement(
  view: Pick<SheetView, "turnRad" | "flipped">,
  wanted: Pick<SheetView, "turnRad" | "flipped">,
): { readonly sameSide: boolean; readonly leftRad: number; readonly agrees: boolean } {
  const sameSide = view.flipped === wanted.flipped;
  const leftRad = wrappedRad(wanted.turnRad - view.turnRad);
  return { sameSide, leftRad, agrees: sameSide && Math.abs(leftRad) <= AGREES_WITHIN_RAD };
}
