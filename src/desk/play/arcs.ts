/** Arcs of the rim: angles clockwise from the top in degrees, lengths in CSS px, x right, y down. */

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
export interface Point {
  readonly x: number;
  readonly y: number;
}
const RAD = Math.PI / 180;
const written = (value: number) => value.toFixed(2);

/** A place on a circle about the origin. */
export const onCircle = (radiusPx: number, atDeg: number): Point => ({
  x: radiusPx * Math.sin(atDeg * RAD),
  y: -radiusPx * Math.cos(atDeg * RAD),
});

const told = ({ x, y }: Point) => `${written(x)} ${written(y)}`;

/** Path of an arc about the origin; runs counter-clockwise where `toDeg` is the smaller. */
export function arcPath(radiusPx: number, fromDeg: number, toDeg: number): string {
  const far = Math.abs(toDeg - fromDeg) > 180 ? 1 : 0;
  const sweep = toDeg > fromDeg ? 1 : 0;
  const r = written(radiusPx);
  return `M${told(onCircle(radiusPx, fromDeg))}A${r} ${r} 0 ${far} ${sweep} ${told(onCircle(radiusPx, toDeg))}`;
}

/** Path of a piece of a ring. */
export function bandPath(innerPx: number, outerPx: number, fromDeg: number, toDeg: number): string {
  const back = arcPath(innerPx, toDeg, fromDeg).replace("M", "L");
  return `${arcPath(outerPx, fromDeg, toDeg)}${back}Z`;
}

/** The smallest box about a piece of a ring, whole px outwards. */
export function bandBox(innerPx: number, outerPx: number, fromDeg: number, toDeg: number, marginPx = 0): Box {
  const angles = [fromDeg, toDeg];
  for (let quarter = Math.ceil(fromDeg / 90) * 90; quarter < toDeg; quarter += 90) angles.push(quarter);
  const points = angles.flatMap((atDeg) => [onCircle(innerPx, atDeg), onCircle(outerPx, atDeg)]);
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  const x = Math.floor(Math.min(...xs) - marginPx);
  const y = Math.floor(Math.min(...ys) - marginPx);
  return {
    x,
    y,
    width: Math.ceil(Math.max(...xs) + marginPx) - x,
    height: Math.ceil(Math.max(...ys) + marginPx) - y,
  };
}

/** Text below the horizontal runs the other way, so that it reads upright. */
export const runsBack = (atDeg: number): boolean => {
  const turned = ((atDeg % 360) + 360) % 360;
  return turned > 110 && turned < 250;
};

/** Mean advance of engraved capitals, in em, tracking included: generous, so that a box or a fit never cuts a letter. */
const ADVANCE_EM = 0.83;

/** Width that engraved text may take, px. */
export const engravedWidthPx = (text: string, sizePx: number): number => text.length * sizePx * ADVANCE_EM;

/** The size at which engraved text fits into a width, at most `sizePx`. */
export const fittedSizePx = (text: string, widthPx: number, sizePx: number): number =>
  Math.min(sizePx, widthPx / (Math.max(1, text.length) * ADVANCE_EM));

/** Share of the size by which capitals stand over the line; text that runs back hangs from its arc by as much. */
const CAPITALS_EM = 0.72;

export interface ArcText {
  /** What the letters stand on, from one side of the text to the other. */
  readonly path: string;
  readonly box: Box;
}

/**
 * Lays text along an arc, its middle at an angle.
 * @param baselinePx radius of the lower edge of the letters as seen from the middle of the circle
 */
export function arcText(text: string, baselinePx: number, atDeg: number, sizePx: number): ArcText {
  const halfDeg = Math.min(170, engravedWidthPx(text, sizePx) / 2 / baselinePx / RAD + 1);
  const back = runsBack(atDeg);
  const radiusPx = back ? baselinePx + CAPITALS_EM * sizePx : baselinePx;
  const path = back
    ? arcPath(radiusPx, atDeg + halfDeg, atDeg - halfDeg)
    : arcPath(radiusPx, atDeg - halfDeg, atDeg + halfDeg);
  return {
    path,
    box: bandBox(baselinePx - 0.35 * sizePx, baselinePx + sizePx, atDeg - halfDeg, atDeg + halfDeg, 1),
  };
}
