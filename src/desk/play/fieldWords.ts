/** The field in words, for one who does not see it: the brightest stars and glows by the clock, as an observer would tell them. */
import { gnomonic, stereographic } from "#core/celestial/projection.ts";
import type { Dir, StarBlock } from "#core/seams/index.ts";
import { say } from "../words/say.ts";
import type { Picture } from "./picture.ts";

const TOLD = 5;
/** The sight's inner ring as a share of its field: who hears "in the middle" there can confirm. */
const IN_THE_MIDDLE = 0.019;

export interface InField {
  readonly dir: Dir;
  readonly magV: number;
  /** From the centre, 1 at the field stop; clockwise from the top, degrees. */
  readonly out: number;
  readonly atDeg: number;
}

const planePoint = [0, 0];

/** Where a direction stands in the picture, or null outside of the field. */
export function placeInField(picture: Picture, dir: Dir, magV: number): InField | null {
  const m = picture.viewFromIcrs;
  const x = m[0]! * dir[0] + m[1]! * dir[1] + m[2]! * dir[2];
  const y = m[3]! * dir[0] + m[4]! * dir[1] + m[5]! * dir[2];
  const z = m[6]! * dir[0] + m[7]! * dir[1] + m[8]! * dir[2];
  const projection = picture.projection === "gnomonic" ? gnomonic : stereographic;
  if (z <= 0 || !projection.project(x, y, z, planePoint)) return null;
  const out = Math.hypot(planePoint[0]!, planePoint[1]!) / picture.planeRadius;
  if (out > 1) return null;
  return { dir, magV, out, atDeg: ((Math.atan2(planePoint[0]!, planePoint[1]!) * 180) / Math.PI + 360) % 360 };
}

/** Stars of the field, the brightest first; `total` counts all that the limit shows. */
export function starsInField(
  picture: Picture,
  blocks: readonly StarBlock[],
  most: number,
): { readonly stars: InField[]; readonly total: number } {
  const found: InField[] = [];
  for (const { dirs, milliMag, count } of blocks) {
    for (let i = 0; i < count && milliMag[i]! <= picture.limitMag * 1000; i++) {
      const place = placeInField(picture, [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!], milliMag[i]! / 1000);
      if (place) found.push(place);
    }
  }
  found.sort((a, b) => a.magV - b.magV);
  return { stars: found.slice(0, most), total: found.length };
}

const clockOf = ({ atDeg }: InField) => ((Math.round(atDeg / 30) + 11) % 12) + 1;

function whereWords(place: InField): string {
  if (place.out < IN_THE_MIDDLE) return say("hop.inTheMiddle");
  const clock = clockOf(place);
  if (place.out < 0.12) return say("hop.offMiddle", { clock });
  if (place.out < 0.45) return say("hop.nearMiddle", { clock });
  return place.out < 0.8 ? say("hop.halfWayOut", { clock }) : say("hop.nearEdge", { clock });
}

/** Where a named star stands: what the figure about it shows to one who sees it. */
export function starInWords(picture: Picture, name: string, dir: Dir): string {
  const place = placeInField(picture, dir, 0);
  return place
    ? say("hop.anchorStands", { anchor: name, where: whereWords(place) })
    : say("hop.anchorNotInView", { anchor: name });
}

/** One sentence or two about what stands where. */
export function fieldInWords(picture: Picture, blocks: readonly StarBlock[]): string {
  const { stars, total } = starsInField(picture, blocks, TOLD);
  const glows = picture.objects.flatMap(({ dir }) => placeInField(picture, dir, 0) ?? []);
  const told = stars.map(whereWords).join("; ");
  const starWords =
    total === 0 ? say("hop.noStars") : say(total === 1 ? "hop.oneStar" : "hop.brightest", { total, told });
  return [starWords, ...glows.map((glow) => say("hop.softSpot", { where: whereWords(glow) }))].join(" ");
}
