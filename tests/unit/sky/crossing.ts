import { cross, dot } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import type { FigureSegment } from "#core/sky/names/types.ts";

/** Whether two arcs of less than a quarter circle cross between their ends. */
export function crosses(a: FigureSegment, b: FigureSegment): boolean {
  const side = (arc: FigureSegment, place: Dir) => dot(cross(arc.from, arc.to), place);
  const apart = (arc: FigureSegment, other: FigureSegment) => side(arc, other.from) * side(arc, other.to) < -1e-18;
  return dot(a.from, b.from) > 0 && apart(a, b) && apart(b, a);
}
