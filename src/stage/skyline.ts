/** The ground that the Sallowfell Observers look over: two tones, all the way round, the same every night. */

export const SKYLINE_SAMPLES = 4096;
export const SKYLINE_ROWS = 2;
/** Heights are kept as 16 bits over this span. */
export const SKYLINE_TOP_DEG = 16;
/** The one lit window: azimuth and height of its centre, half width and half height. */
export const WINDOW = { azimuthDeg: 150.3, heightDeg: 2.55, halfWidthDeg: 0.12, halfHeightDeg: 0.16 } as const;

/** Outline at one azimuth, degrees: solid from below up to `ground`, and again from `crownFrom` to `crownTo`. */
export interface NearOutline {
  ground: number;
  crownFrom: number;
  crownTo: number;
}
type Tree = { readonly at: number; readonly half: number; readonly top: number };
/** `roof` is a ridge house, `spire` a tower with a point. */
type Building = Tree & { readonly wall: number; readonly kind: "roof" | "spire" };

const tree = (at: number, half: number, top: number): Tree => ({ at, half, top });
const roof = (at: number, half: number, wall: number, top: number): Building => ({ at, half, wall, top, kind: "roof" });
const TREES: readonly Tree[] = [
  tree(8, 1.5, 5.1),
  tree(10.8, 1.1, 4.1),
  tree(47.5, 1.9, 6),
  tree(71, 1.3, 4.6),
  tree(73.4, 1, 4),
  tree(118, 1.5, 5.2),
  tree(139, 1.7, 5.5),
  tree(163, 1.2, 4.4),
  tree(188, 2, 6.3),
  tree(191.9, 1.4, 5),
  tree(233, 1.4, 4.8),
  tree(251.6, 1.1, 4.1),
  tree(254, 1.5, 5.2),
  tree(281, 1.1, 4.3),
  tree(305, 1.8, 5.7),
  tree(344, 1.3, 4.6),
];
const BUILDINGS: readonly Building[] = [
  roof(33, 2.1, 2.9, 3.8),
  roof(97, 1.4, 2.8, 3.6),
  { at: 103.4, half: 0.55, wall: 4.5, top: 8.2, kind: "spire" },
  roof(100.8, 2, 2.9, 3.6),
  roof(150.3, 1.45, 2.95, 3.95),
  roof(214, 1.9, 2.8, 3.7),
  roof(276, 1.7, 2.9, 3.8),
  roof(327, 1.3, 2.8, 3.7),
];
/** Round lobes make a crown: place from its middle and radius, in halves of its width. */
const LOBES: readonly (readonly [across: number, up: number, radius: number])[] = [
  [0, 0, 0.62],
  [-0.56, -0.12, 0.4],
  [-0.68, 0.14, 0.3],
  [-0.38, 0.4, 0.38],
  [-0.06, 0.58, 0.36],
  [0.3, 0.46, 0.38],
  [0.62, 0.2, 0.34],
  [0.66, -0.1, 0.32],
  [0.34, -0.34, 0.36],
  [-0.2, -0.42, 0.36],
  [0.12, 0.72, 0.24],
  [-0.86, 0, 0.16],
  [0.88, 0.06, 0.14],
];
const CROWN_TOP = 0.96;
const TRUNK = 0.11;

const turn = (deg: number): number => deg - 360 * Math.floor((deg + 180) / 360);
const wave = (azimuthDeg: number, times: number, shiftDeg: number): number =>
  Math.sin(((azimuthDeg * times + shiftDeg) * Math.PI) / 180);

/** No two crowns are alike: each second one is mirrored, and they are tall or broad in turn. */
const addTree = (outline: NearOutline, one: Tree, off: number, index: number): void => {
  const tall = 0.86 + 0.34 * ((index * 0.618) % 1);
  const side = index % 2 === 0 ? one.half : -one.half;
  const middle = one.top - CROWN_TOP * tall * one.half;
  for (const [across, up, size] of LOBES) {
    const away = off - across * side;
    const radius = size * one.half;
    if (Math.abs(away) >= radius) continue;
    const half = tall * Math.sqrt(radius * radius - away * away);
    outline.crownFrom = Math.min(outline.crownFrom, middle + tall * up * one.half - half);
    outline.crownTo = Math.max(outline.crownTo, middle + tall * up * one.half + half);
  }
  if (Math.abs(off) < TRUNK * one.half) outline.crownFrom = 0;
};
const buildingHeight = (one: Building, off: number): number => {
  const along = Math.abs(off) / one.half;
  if (along > 1) return 0;
  if (one.kind === "spire") return along > 0.97 ? one.wall : one.wall + (one.top - one.wall) * (1 - along);
  const chimney = off > one.half * 0.4 && off < one.half * 0.56 ? one.top + 0.15 : 0;
  return Math.max(chimney, one.wall + (one.top - one.wall) * Math.min(1, 1.9 * (1 - along)));
};

/** Hedges, trees and roofs at an azimuth (from north by east). */
export const nearOutline = (azimuthDeg: number): NearOutline => {
  const hedge = 2 + 0.35 * wave(azimuthDeg, 2, 40) + 0.2 * wave(azimuthDeg, 7, 10) + 0.09 * wave(azimuthDeg, 41, 0);
  const leaves = 0.05 * wave(azimuthDeg, 118, 25) + 0.035 * wave(azimuthDeg, 203, 70);
  const outline = { ground: hedge + leaves, crownFrom: SKYLINE_TOP_DEG, crownTo: 0 };
  TREES.forEach((one, i) => {
    addTree(outline, one, turn(azimuthDeg - one.at), i);
  });
  for (const one of BUILDINGS)
    outline.ground = Math.max(outline.ground, buildingHeight(one, turn(azimuthDeg - one.at)));
  return outline;
};
/** Height of the far hills, degrees; Sallowfell itself is the long back in the north-west. */
export const farHeightDeg = (azimuthDeg: number): number => {
  const fell = 2.1 * Math.exp(-((turn(azimuthDeg - 310) / 26) ** 2));
  return 3 + fell + 0.7 * wave(azimuthDeg, 3, 80) + 0.45 * wave(azimuthDeg, 5, 200) + 0.16 * wave(azimuthDeg, 13, 35);
};

/**
 * Two rows of texels, north first and on by east, each value as high byte and low byte: near ground and far hills; crowns
 * from and to. Beside a crown both are its middle, so that nothing appears between the samples.
 */
export const skylineTexels = (): Uint8Array => {
  const texels = new Uint8Array(SKYLINE_SAMPLES * SKYLINE_ROWS * 4);
  const put = (at: number, heightDeg: number) => {
    const value = Math.round((65535 * Math.min(SKYLINE_TOP_DEG, Math.max(0, heightDeg))) / SKYLINE_TOP_DEG);
    texels[at] = value >> 8;
    texels[at + 1] = value & 255;
  };
  const outlines = Array.from({ length: SKYLINE_SAMPLES }, (_, i) => nearOutline((360 * i) / SKYLINE_SAMPLES));
  outlines.forEach((outline, i) => {
    const beside = [i - 1, i + 1].map((j) => outlines[(j + SKYLINE_SAMPLES) % SKYLINE_SAMPLES]!);
    const crown = outline.crownTo > 0 ? outline : beside.find((other) => other.crownTo > 0);
    const middle = crown ? (crown.crownFrom + crown.crownTo) / 2 : 0;
    const second = (SKYLINE_SAMPLES + i) * 4;
    put(i * 4, outline.ground);
    put(i * 4 + 2, farHeightDeg((360 * i) / SKYLINE_SAMPLES));
    put(second, outline.crownTo > 0 ? outline.crownFrom : middle);
    put(second + 2, outline.crownTo > 0 ? outline.crownTo : middle);
  });
  return texels;
};
