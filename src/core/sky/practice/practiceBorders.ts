/** The borders of a practice sky's constellations as lines to draw: loaded apart from the rest, for they are needed late. */
import { pixelCentre, pixelCorners, pixelsInCone } from "#core/celestial/healpix.ts";
import { DEG, normalise } from "#core/celestial/vector.ts";
import type { Cone, Dir } from "#core/seams/index.ts";
import type { BorderLine } from "../boundaries/borderLines.ts";
import type { ConstellationAt } from "./regions.ts";

/** Pixels of 0.9 degrees, in wide cones of 1.8. */
const FINE_ORDER = 6;
const WIDE_ORDER = 5;
const WIDE_RAD = 20 * DEG;
/** Halvings by which a border is found along a pixel's edge: to a 250th of it. */
const HALVINGS = 8;

/** The borders through the pixels that touch a circle of the sky: in each the line from edge to edge, or three to its middle. */
export function practiceBordersWithin(at: ConstellationAt, { centre, radiusRad }: Cone): BorderLine[] {
  const order = radiusRad > WIDE_RAD ? WIDE_ORDER : FINE_ORDER;
  const lines: BorderLine[] = [];
  for (const pixel of pixelsInCone(order, centre, radiusRad, [])) {
    const crossings = crossingsOf(pixelCorners(order, pixel), at);
    const [one, other] = crossings;
    if (crossings.length === 2) lines.push([one!, other!]);
    else for (const crossing of crossings) lines.push([crossing, pixelCentre(order, pixel)]);
  }
  return lines;
}

function crossingsOf(corners: readonly Dir[], at: ConstellationAt): Dir[] {
  const names = corners.map(at);
  return corners.flatMap((corner, i) => {
    const next = (i + 1) % corners.length;
    return names[i] === names[next] ? [] : [crossingOf(corner, corners[next]!, names[i]!, at)];
  });
}

/** Where the way from one direction to another leaves a constellation. */
function crossingOf(from: Dir, to: Dir, own: string, at: ConstellationAt): Dir {
  let [inside, outside] = [from, to];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = halfWay(inside, outside);
    if (at(middle) === own) inside = middle;
    else outside = middle;
  }
  return halfWay(inside, outside);
}

const halfWay = (a: Dir, b: Dir): Dir => normalise([a[0] + b[0], a[1] + b[1], a[2] + b[2]]);
