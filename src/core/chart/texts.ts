/** The page's lettering: what is named, in the order in which it is wanted, and where it stands with north up. */
import { DEG } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { AS_ONE_ARCMIN } from "#core/sky/closePairs/joinPairs.ts";
import { ANCHOR_RADIUS_PX, type ChartContent, dotRadiusPx } from "./content.ts";
import { type LabelWish, roughWidth } from "./labels.ts";
import { layLetters } from "./letters.ts";
import type { ChartPage, PagePoint, PageProjection } from "./page.ts";
import { PLAIN_VIEW } from "./sheetView.ts";
import type { ChartMark, TextMark, TextStyle } from "./types.ts";

/** Within some 10 arcseconds: the anchor by its name. */
const COS_SAME_STAR = 1 - 1.2e-9;
/** Within 1': one dot on paper. On a page for the naked eye: within what that does not part. */
const COS_SAME_DOT = 1 - 4.2e-8;
const COS_SAME_DOT_BY_EYE = Math.cos((AS_ONE_ARCMIN / 60) * DEG);

/** Where a figure's name stands: at its middle, or, where that is off the page, amid what the page shows of it. */
function nameDir(page: ChartPage, content: ChartContent, projection: PageProjection, i: number): PagePoint | null {
  const { abbr, centre } = content.figures[i]!;
  const point: PagePoint = { x: 0, y: 0 };
  const onPage = (dir: Dir) => separationCos(dir, page.centre) > 0.5 && projection.project(dir, point);
  if (onPage(centre) && projection.holds(point, 24)) return point;
  const shown = content.segments.filter(({ figure }) => figure === abbr).flatMap(({ from, to }) => [from, to]);
  const places = shown
    .filter((dir) => onPage(dir) && projection.holds(point))
    .map((dir) => {
      projection.project(dir, point);
      return { ...point };
    });
  if (places.length === 0) return null;
  const mean = (axis: "x" | "y") => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
  // Off the star itself, towards the middle of the page.
  return { x: mean("x") * 0.8, y: mean("y") * 0.8 - 14 };
}

const separationCos = (a: Dir, b: Dir) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** Of stars that stand as one dot, the brightest alone: a pair prints one name. */
function printedOnce<Star extends { readonly dir: Dir }>(brightestFirst: readonly Star[], byEye: boolean): Star[] {
  const cosSameDot = byEye ? COS_SAME_DOT_BY_EYE : COS_SAME_DOT;
  const kept: Star[] = [];
  for (const star of brightestFirst) {
    if (!kept.some(({ dir }) => separationCos(dir, star.dir) > cosSameDot)) kept.push(star);
  }
  return kept;
}

/** Names wished for, the most wanted first: what the hop needs, the anchor's figure with it, then bright stars, then figures. */
function wishesOf(page: ChartPage, content: ChartContent, projection: PageProjection): LabelWish[] {
  const point = { x: 0, y: 0 };
  const at = (dir: Dir, r: number, style: TextStyle, text: string): LabelWish[] =>
    text && projection.project(dir, point) && projection.holds(point, 12)
      ? [{ x: point.x, y: point.y, r, style, text }]
      : [];
  const { anchor, target, words } = content;
  const brightestFirst = content.names.filter(({ magV }) => magV <= page.limitMag).sort((a, b) => a.magV - b.magV);
  const stars = printedOnce(brightestFirst, page.byEye === true);
  const atAnchor = (dir: Dir) => anchor !== null && separationCos(dir, anchor) > COS_SAME_STAR;
  const figures = content.figures.map(({ abbr, name }, i) => {
    const place = nameDir(page, content, projection, i);
    const wish: LabelWish[] = place ? [{ ...place, r: 0, style: "figureName", text: name.toUpperCase() }] : [];
    const isHome = content.segments.some(({ figure, from, to }) => figure === abbr && (atAnchor(from) || atAnchor(to)));
    return { wish, isHome };
  });
  const figureWishes = (home: boolean) => figures.flatMap(({ wish, isHome }) => (isHome === home ? wish : []));
  return [
    ...(anchor ? at(anchor, ANCHOR_RADIUS_PX, "word", words.anchor) : []),
    ...(target ? at(target.dir, 11, "word", words.target) : []),
    ...figureWishes(true),
    ...stars.flatMap(({ dir, magV, proper, label }) => {
      const r = atAnchor(dir) ? ANCHOR_RADIUS_PX : dotRadiusPx(magV, page.limitMag);
      if (proper && magV < 2.6) return at(dir, r, "starName", proper);
      return at(dir, r, /^\d/.test(label) ? "number" : "greek", label);
    }),
    ...figureWishes(false),
  ];
}

/**
 * All the page's lettering, placed north up or marked as without a place.
 * @param printed the other marks of the page
 */
export function textsOf(
  page: ChartPage,
  content: ChartContent,
  projection: PageProjection,
  printed: readonly ChartMark[],
): TextMark[] {
  const texts = wishesOf(page, content, projection).map(
    ({ x, y, r, style, text }): TextMark => ({
      kind: "text",
      style,
      x,
      y,
      align: "middle",
      text,
      of: { x, y, r },
      placed: false,
    }),
  );
  const options = { measure: roughWidth, pxPerPagePx: 1, typeScale: 1, lit: null };
  const laid = layLetters(page, [...printed, ...texts], PLAIN_VIEW, options);
  const key = ({ style, text, of }: TextMark) => `${style} ${text} ${of.x} ${of.y}`;
  const placed = new Map(laid.map((text) => [key(text), text]));
  const figures = laid.filter(({ style }) => style === "gridFigure");
  return [...figures, ...texts.map((text) => placed.get(key(text)) ?? text)];
}
