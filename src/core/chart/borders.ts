/** Borders of constellations on a page. */
import type { Dir } from "#core/seams/index.ts";
import { clippedToFrame } from "./clip.ts";
import type { ChartPage, PageProjection } from "./page.ts";
import type { LineMark } from "./types.ts";

/** Each border as the runs of it that lie within the frame, each a mark of its own. */
export function borderMarks(
  page: ChartPage,
  projection: PageProjection,
  borders: readonly (readonly Dir[])[],
): LineMark[] {
  return borders.flatMap((border) => runsOf(page, projection, border));
}

function runsOf(page: ChartPage, projection: PageProjection, border: readonly Dir[]): LineMark[] {
  const places = border.map((dir) => {
    const point = { x: 0, y: 0 };
    return projection.project(dir, point) ? point : null;
  });
  const runs: number[][] = [];
  for (let i = 1; i < places.length; i++) {
    const [from, to] = [places[i - 1], places[i]];
    const part = from && to ? clippedToFrame(page, from, to) : null;
    if (!part) continue;
    const last = runs.at(-1);
    const goesOn = last && last.at(-2) === part[0] && last.at(-1) === part[1];
    if (goesOn) last.push(part[2]!, part[3]!);
    else runs.push(part);
  }
  return runs.map((points) => ({ kind: "line", style: "border", points }));
}
