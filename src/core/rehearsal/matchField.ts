/**
 * Finds a field on the page, as an observer does: two stars of the field are laid on two of the page that are as far apart
 * and as bright, and the rest must then agree.
 */
import type { VisibleStars } from "#core/field/visibleStars.ts";
import type { PaperPoint, PaperStar } from "./types.ts";

/**
 * The field laid on the page: where its middle lies, how it is turned (a, b: one radius to the right, in radii of the paper, y
 * up), how many stars agree, and their share of those that should.
 */
export type Fix = PaperPoint & {
  readonly a: number;
  readonly b: number;
  readonly matched: number;
  readonly share: number;
};
export type MatchHow = {
  /** Radius of the field on the paper. */
  readonly radiusPx: number;
  readonly parity: 1 | -1;
  /** The middle of the field is sought within so much of here. */
  readonly near: PaperPoint;
  readonly withinPx: number;
};

/** A star in fields' radii: of the field, or of the page with y up. */
type Point = { readonly x: number; readonly y: number; readonly mag: number };
/** place = turned and scaled by (a, b), then shifted. */
type Laying = { readonly a: number; readonly b: number; readonly x: number; readonly y: number };

const STARS_COMPARED = 16;
const STARS_TRIED = 9;
/** Shorter pairs turn the field too loosely. */
const SHORTEST_PAIR = 0.35;
/** A page stretches a few per cent off its centre, and dots are no points. */
const STRETCH = { least: 0.96, most: 1.05 } as const;
const CLOSE = 0.035;
const SAME_MAG = 0.5;
/** Stars so near the edge may be cut off. */
const SAFE_RADIUS = 0.95;
const ENOUGH = { stars: 4, share: 0.6, sure: 0.9 } as const;

/** The best laying of a field on the page, or null where nothing agrees well enough. */
export function matchField(field: VisibleStars, page: readonly PaperStar[], how: MatchHow): Fix | null {
  const printed = pageStars(page, how);
  const seen = fieldStars(field, how, faintestOf(page)).slice(0, STARS_COMPARED);
  const known = printed.filter(({ mag }) => mag <= (seen.at(-1)?.mag ?? 0) + SAME_MAG);
  let best: { laying: Laying; matched: number; share: number } | null = null;
  for (const laying of layings(seen, known, how)) {
    const judged = judge(laying, seen, known);
    if (!best || judged.share > best.share) best = { laying, ...judged };
    if (best.share >= ENOUGH.sure && best.matched >= 6) break;
  }
  if (!best || best.matched < ENOUGH.stars || best.share < ENOUGH.share) return null;
  const { a, b, x, y } = best.laying;
  const { near, radiusPx } = how;
  const { matched, share } = best;
  return { x: near.x + x * radiusPx, y: near.y - y * radiusPx, a, b, matched, share };
}

/** Stars of a field that the page should have and has not, where they would be printed; brightest first. */
export function unprinted(
  field: VisibleStars,
  page: readonly PaperStar[],
  { x, y, a, b }: Fix,
  how: Pick<MatchHow, "radiusPx" | "parity">,
): PaperStar[] {
  const { radiusPx } = how;
  return fieldStars(field, how, faintestOf(page))
    .map((star) => ({
      x: x + radiusPx * (a * star.x - b * star.y),
      y: y - radiusPx * (b * star.x + a * star.y),
      magV: star.mag,
    }))
    .filter((star) => page.every((dot) => Math.hypot(dot.x - star.x, dot.y - star.y) > CLOSE * radiusPx));
}

function faintestOf(page: readonly PaperStar[]): number {
  return page.reduce((faintest, { magV }) => Math.max(faintest, magV), -9);
}

/** The page's stars about the place sought, from there, in fields' radii, y up; brightest first. */
function pageStars(page: readonly PaperStar[], { near, withinPx, radiusPx }: MatchHow): Point[] {
  const reach = (withinPx + radiusPx) / radiusPx;
  return page
    .map(({ x, y, magV }) => ({ x: (x - near.x) / radiusPx, y: (near.y - y) / radiusPx, mag: magV }))
    .filter(({ x, y }) => x * x + y * y <= reach * reach)
    .sort((a, b) => a.mag - b.mag);
}

/** The stars of the field that the page should have, mirrored back where the instrument mirrors; brightest first. */
function fieldStars(
  { count, x, y, milliMag }: VisibleStars,
  { parity }: Pick<MatchHow, "parity">,
  faintest: number,
): Point[] {
  const stars: Point[] = [];
  for (let i = 0; i < count; i++) {
    const mag = milliMag[i]! / 1000;
    const inside = x[i]! * x[i]! + y[i]! * y[i]! <= SAFE_RADIUS * SAFE_RADIUS;
    if (inside && mag <= faintest - 0.1) stars.push({ x: parity * x[i]!, y: y[i]!, mag });
  }
  return stars.sort((a, b) => a.mag - b.mag);
}

/** Every way to lay a pair of bright stars of the field on a pair of the page that is like it. */
function* layings(seen: readonly Point[], known: readonly Point[], how: MatchHow): Generator<Laying> {
  const within = how.withinPx / how.radiusPx;
  const tried = seen.slice(0, STARS_TRIED);
  const alike = tried.map(({ mag }) => known.filter((star) => Math.abs(star.mag - mag) <= SAME_MAG));
  for (let second = 1; second < tried.length; second++) {
    for (let first = 0; first < second; first++) {
      const [p, q] = [tried[first]!, tried[second]!];
      if (Math.hypot(q.x - p.x, q.y - p.y) < SHORTEST_PAIR) continue;
      for (const u of alike[first]!) {
        for (const v of alike[second]!) {
          const laying = layOn(p, q, u, v);
          if (laying && laying.x * laying.x + laying.y * laying.y <= within * within) yield laying;
        }
      }
    }
  }
}

/** The turn, scale and shift that bring p to u and q to v; null where the scale is none of a page. */
function layOn(p: Point, q: Point, u: Point, v: Point): Laying | null {
  const [dx, dy, ex, ey] = [q.x - p.x, q.y - p.y, v.x - u.x, v.y - u.y];
  const length2 = dx * dx + dy * dy;
  const a = (dx * ex + dy * ey) / length2;
  const b = (dx * ey - dy * ex) / length2;
  const scale2 = a * a + b * b;
  if (scale2 < STRETCH.least * STRETCH.least || scale2 > STRETCH.most * STRETCH.most) return null;
  return { a, b, x: u.x - (a * p.x - b * p.y), y: u.y - (b * p.x + a * p.y) };
}

/** How many stars of the field find their like, as a share of those that field and page should have in common. */
function judge(laying: Laying, seen: readonly Point[], known: readonly Point[]): { matched: number; share: number } {
  const { a, b, x, y } = laying;
  let matched = 0;
  for (const star of seen) {
    const px = a * star.x - b * star.y + x;
    const py = b * star.x + a * star.y + y;
    if (known.some((k) => isLike(k, px, py, star.mag))) matched += 1;
  }
  const faintest = (seen.at(-1)?.mag ?? 0) - SAME_MAG / 2;
  const safe = SAFE_RADIUS - CLOSE;
  const expected = known.filter((k) => k.mag <= faintest && (k.x - x) ** 2 + (k.y - y) ** 2 <= safe * safe).length;
  return { matched, share: matched / Math.max(seen.length, expected, 1) };
}

function isLike(star: Point, x: number, y: number, mag: number): boolean {
  const [dx, dy] = [star.x - x, star.y - y];
  return dx * dx + dy * dy <= CLOSE * CLOSE && Math.abs(star.mag - mag) <= SAME_MAG;
}
