/**
 * Which of the packed stars a view shows, as lists of indices: a few hundredths of a millisecond here save the graphics
 * processor every star of the tiles that lies outside the field, which counts where it draws in software.
 */
import { STAR_BYTES, type StarPack } from "./starPack.ts";

const WORDS = STAR_BYTES / 4;
const HALFWORDS = STAR_BYTES / 2;

export interface IndexList {
  indices: Uint32Array;
  /** Stars in the list. */
  count: number;
  /** Indices a star: 1 for a point, 6 for a quad. */
  readonly perStar: 1 | 6;
}
export const createIndexList = (perStar: 1 | 6): IndexList => ({
  indices: new Uint32Array(1024 * perStar),
  count: 0,
  perStar,
});
const reserve = (list: IndexList, stars: number): void => {
  if (stars * list.perStar > list.indices.length) list.indices = new Uint32Array(Math.ceil(stars * 1.5) * list.perStar);
};

/**
 * Lists the stars whose V (0.001 mag) lies in `from < V <= to` and whose direction is within a circle about forward, the
 * last row of the view matrix.
 */
export const listPoints = (
  list: IndexList,
  pack: StarPack,
  viewFromIcrs: ArrayLike<number>,
  cosReach: number,
  from: number,
  to: number,
): void => {
  reserve(list, pack.count);
  const { floats, halfwords } = pack;
  const { indices } = list;
  const x = viewFromIcrs[6]!;
  const y = viewFromIcrs[7]!;
  const z = viewFromIcrs[8]!;
  let count = 0;
  for (let i = 0; i < pack.count; i++) {
    const at = i * WORDS;
    if (x * floats[at]! + y * floats[at + 1]! + z * floats[at + 2]! < cosReach) continue;
    const milliMag = halfwords[i * HALFWORDS + 6]!;
    if (milliMag > from && milliMag <= to) indices[count++] = i;
  }
  list.count = count;
};

/** What a quad needs to know of the field, device px. */
export interface QuadField {
  stereographic: boolean;
  pxPerPlane: number;
  /** Up to here light is let through alike; beyond there is none. */
  wholePx: number;
  edgePx: number;
  /** Reach of a star's glare: `glarePx + glarePxPerMag * (toMag - V)`. */
  glarePx: number;
  glarePxPerMag: number;
}
const addQuad = (list: IndexList, corner: number): void => {
  const { indices } = list;
  let at = list.count++ * 6;
  indices[at++] = corner;
  indices[at++] = corner + 1;
  indices[at++] = corner + 2;
  indices[at++] = corner + 2;
  indices[at++] = corner + 1;
  indices[at] = corner + 3;
};
/**
 * Lists quads (four packed corners a star, two triangles) of the stars with V (0.001 mag) up to `to`: those whose light
 * lies wholly within the field, and those that its stop cuts.
 */
export const listQuads = (
  whole: IndexList,
  cut: IndexList,
  pack: StarPack,
  viewFromIcrs: ArrayLike<number>,
  field: QuadField,
  to: number,
): void => {
  reserve(whole, pack.count);
  reserve(cut, pack.count);
  whole.count = 0;
  cut.count = 0;
  const { floats, halfwords } = pack;
  const x = viewFromIcrs[6]!;
  const y = viewFromIcrs[7]!;
  const z = viewFromIcrs[8]!;
  for (let i = 0; i < pack.count; i++) {
    const corner = i * 4;
    const word = corner * WORDS;
    const milliMag = halfwords[corner * HALFWORDS + 6]!;
    const cos = x * floats[word]! + y * floats[word + 1]! + z * floats[word + 2]!;
    if (milliMag > to || cos <= (field.stereographic ? -0.9 : 0.02)) continue;
    const squared = field.stereographic ? (4 * (1 - cos)) / (1 + cos) : (1 - cos * cos) / (cos * cos);
    const px = field.pxPerPlane * Math.sqrt(Math.max(0, squared));
    const reach = field.glarePx + (field.glarePxPerMag * (to - milliMag)) / 1000;
    if (px + reach < field.wholePx) addQuad(whole, corner);
    else if (px - reach < field.edgePx) addQuad(cut, corner);
  }
};
