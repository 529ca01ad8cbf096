/** What an eye finds in a picture of the field: points of light with their brightness, and glows that are no stars. */
import type { Pixels } from "./png.ts";
import { glareOf, HALF_REACH, measuresOf, overLimitOf, reachOfFaint } from "./starLaw.ts";

/** A star of the picture: x right and y up from the middle, in radii of the field. */
export interface Blob {
  readonly x: number;
  readonly y: number;
  /** By how much it is brighter than the faintest that is seen, magnitudes. */
  readonly overLimitMag: number;
}
type Measured = Blob & { readonly reach: number; readonly glare: number };
/** A glow, or a handful of stars close together; places as for stars. */
export interface Glow {
  readonly x: number;
  readonly y: number;
}

/** Stars so bright dazzle: what stands in their glare cannot be judged. */
const DAZZLING_MAG = 4.5;
const LEAST_OVER_SKY = 26;
/** Letters of the compass stand beyond this. */
const RIM = 0.93;
const SKY_RING_PX = 8;
/** Glows are sought in squares of the picture, away from the shaded edge. */
const SQUARES = 60;
const GLOW_RIM = 0.78;
const GLOW_OVER_SKY = 5;
const LEAST_SQUARES = 6;
/** Stars so bright have glare, and its middle is theirs. */
const GLARING_MAG = 3.5;
const GLARE_REACH = 0.05;

/** The green channel as seen from the middle of the picture. */
interface Seen {
  readonly radiusPx: number;
  readonly middle: number;
  readonly width: number;
  at(x: number, y: number): number;
}

function seenOf({ width, height, channels, bytes }: Pixels): Seen {
  return {
    radiusPx: width / 2,
    middle: width / 2,
    width,
    at: (x, y) => (x < 0 || y < 0 || x >= width || y >= height ? 0 : bytes[(y * width + x) * channels + 1]!),
  };
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;

/** The sky by distance from the middle: the median of each ring. */
function skyByRing(seen: Seen): (awayPx: number) => number {
  const rings: number[][] = [];
  for (let y = 0; y < seen.width; y += 2) {
    for (let x = 0; x < seen.width; x += 2) {
      const ring = Math.floor(Math.hypot(x - seen.middle, y - seen.middle) / SKY_RING_PX);
      const values = rings[ring] ?? [];
      rings[ring] = values;
      values.push(seen.at(x, y));
    }
  }
  const sky = rings.map(median);
  return (awayPx) => sky[Math.floor(awayPx / SKY_RING_PX)] ?? 0;
}

const isPeak = (seen: Seen, x: number, y: number): boolean => {
  const value = seen.at(x, y);
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      const other = seen.at(x + dx, y + dy);
      // Of equal neighbours the first one in reading order is the peak.
      if (other > value || (other === value && (dy < 0 || (dy === 0 && dx < 0)))) return false;
    }
  }
  return true;
};

/** Light of a place over the sky, display values. */
const lightAt = (seen: Seen, sky: number, x: number, y: number) => Math.max(0, seen.at(x, y) - sky) / 255;

const BESIDE = [
  [1, 0],
  [-1, 0],
  [0, 1],
  [0, -1],
] as const;

/**
 * How far the light of the star reaches whose peak is there: by the area brighter than at half its reach that hangs together
 * with the peak. Its neighbours in a handful are not its light.
 */
function reachOf(seen: Seen, sky: number, px: number, py: number, leastPx: number): number {
  const look = Math.ceil(5 * leastPx);
  const isOf = (x: number, y: number) =>
    Math.abs(x - px) <= look && Math.abs(y - py) <= look && lightAt(seen, sky, x, y) > HALF_REACH;
  const area = new Set<number>();
  const open = isOf(px, py) ? [[px, py] as const] : [];
  for (const [x, y] of open) {
    if (area.has(y * seen.width + x)) continue;
    area.add(y * seen.width + x);
    for (const [dx, dy] of BESIDE) if (isOf(x + dx, y + dy)) open.push([x + dx, y + dy]);
  }
  return Math.max(leastPx, 2 * Math.sqrt(area.size / Math.PI));
}

/** Flux within the reach, and its centre. */
function measure(seen: Seen, sky: number, px: number, py: number, reachPx: number) {
  const reach = Math.ceil(reachPx);
  let [flux, sumX, sumY] = [0, 0, 0];
  for (let y = py - reach; y <= py + reach; y++) {
    for (let x = px - reach; x <= px + reach; x++) {
      if (Math.hypot(x - px, y - py) > reachPx + 0.5) continue;
      const light = lightAt(seen, sky, x, y);
      flux += light;
      sumX += light * (x + 0.5);
      sumY += light * (y + 0.5);
    }
  }
  return { flux, x: sumX / flux, y: sumY / flux };
}

/**
 * Stars of a square picture whose inscribed circle is the field; the brightest first.
 * @param starPx size of stars: CSS px times the page's own scale of stars
 */
export function findStars(pixels: Pixels, starPx: number): Blob[] {
  const seen = seenOf(pixels);
  const sky = skyByRing(seen);
  const corePx = reachOfFaint(starPx);
  const measures = measuresOf(starPx, sky(0) / 255);
  const found: Measured[] = [];
  for (let y = 1; y < seen.width - 1; y++) {
    for (let x = 1; x < seen.width - 1; x++) {
      const away = Math.hypot(x - seen.middle, y - seen.middle);
      if (away > RIM * seen.radiusPx) continue;
      const under = sky(away);
      if (seen.at(x, y) - under < LEAST_OVER_SKY || !isPeak(seen, x, y)) continue;
      const reachPx = reachOf(seen, under, x, y, corePx);
      const star = measure(seen, under, x, y, reachPx);
      const overLimitMag = overLimitOf(measures, star.flux);
      found.push({
        x: (star.x - seen.middle) / seen.radiusPx,
        y: (seen.middle - star.y) / seen.radiusPx,
        overLimitMag,
        reach: reachPx / seen.radiusPx,
        glare: glareOf(overLimitMag, starPx) / seen.radiusPx,
      });
    }
  }
  return apart(found.sort((a, b) => b.overLimitMag - a.overLimitMag));
}

/** One of those that stand within a star's own light; and none in the glare of a dazzling one. */
function apart(stars: readonly Measured[]): Blob[] {
  const kept: Measured[] = [];
  for (const star of stars) {
    const isLost = kept.some(({ x, y, reach, glare, overLimitMag }) => {
      const away = Math.hypot(x - star.x, y - star.y);
      return away < reach || (overLimitMag > DAZZLING_MAG && away < glare);
    });
    if (!isLost) kept.push(star);
  }
  return kept;
}

/** Median light of the picture's squares; NaN beyond the part that is looked at. */
function squaresOf(seen: Seen): number[] {
  const side = seen.width / SQUARES;
  return Array.from({ length: SQUARES * SQUARES }, (_, i) => {
    const [left, top] = [(i % SQUARES) * side, Math.floor(i / SQUARES) * side];
    const [x, y] = placeOf(i);
    if (Math.hypot(x, y) > GLOW_RIM) return Number.NaN;
    const values: number[] = [];
    for (let dy = 0; dy < side; dy++)
      for (let dx = 0; dx < side; dx++) values.push(seen.at(Math.floor(left + dx), Math.floor(top + dy)));
    return median(values);
  });
}
/** Middle of a square, radii from the picture's middle, y up. */
const placeOf = (i: number): readonly [x: number, y: number] => [
  (2 * ((i % SQUARES) + 0.5)) / SQUARES - 1,
  1 - (2 * (Math.floor(i / SQUARES) + 0.5)) / SQUARES,
];

/** Squares that hang together, over the sky. */
function heaps(over: readonly number[]): number[][] {
  const left = new Set(over.flatMap((value, i) => (value > GLOW_OVER_SKY ? [i] : [])));
  const found: number[][] = [];
  for (const first of left) {
    const heap = [first];
    left.delete(first);
    for (const i of heap) for (const by of [1, -1, SQUARES, -SQUARES]) if (left.delete(i + by)) heap.push(i + by);
    found.push(heap);
  }
  return found.filter(({ length }) => length >= LEAST_SQUARES);
}

/**
 * Glows of the picture, weighted by their light; the glare about a bright star is none. The sky is what is darkest, shaded
 * by a tenth towards .82 of the radius.
 */
export function findGlows(pixels: Pixels, stars: readonly Blob[]): Glow[] {
  const squares = squaresOf(seenOf(pixels));
  const shade = (i: number) => 1 - (0.1 * Math.hypot(...placeOf(i))) / 0.82;
  const open = squares.flatMap((value, i) => (Number.isNaN(value) ? [] : [value / shade(i)]));
  const sky = open.sort((a, b) => a - b)[Math.floor(open.length / 20)] ?? 0;
  const over = squares.map((value, i) => value - sky * shade(i));
  const glows = heaps(over).map((heap) => {
    const sum = heap.reduce((total, i) => total + over[i]!, 0);
    const mean = (axis: 0 | 1) => heap.reduce((total, i) => total + over[i]! * placeOf(i)[axis], 0) / sum;
    return { x: mean(0), y: mean(1) };
  });
  const glaring = stars.filter(({ overLimitMag }) => overLimitMag > GLARING_MAG);
  return glows.filter(({ x, y }) => !glaring.some((star) => Math.hypot(star.x - x, star.y - y) < GLARE_REACH));
}

/** Handfuls: places where at least so many stars stand within so many radii. */
export function findHandfuls(stars: readonly Blob[], within: number, atLeast: number): Glow[] {
  const close = (star: Blob) => stars.filter(({ x, y }) => Math.hypot(x - star.x, y - star.y) < within);
  const [best] = stars.map(close).sort((a, b) => b.length - a.length);
  if (!best || best.length < atLeast) return [];
  const mean = (axis: "x" | "y") => best.reduce((sum, star) => sum + star[axis], 0) / best.length;
  return [{ x: mean("x"), y: mean("y") }];
}
