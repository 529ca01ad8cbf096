/** How long a trail may be for one, two and three dots, with the pins and the care that this attempt had. */
import type { Lesson } from "#core/lesson/types.ts";
import { corridorOf, excessDas } from "#core/score/corridor.ts";
import { weightsOf } from "#core/score/report.ts";
import { CORRIDOR_HALF_FIELDS, FREE_PAR_TENTHS } from "#core/score/rules.ts";
import type { AttemptRecord, Report } from "#core/seams/index.ts";

export type ParMark = { readonly dots: 1 | 2 | 3; readonly lengthDas: number };

const pointsOf = ({ lines }: Report, what: string): number => lines.find((one) => one.what === what)?.points ?? 0;

/**
 * The marks of the line "you against par", each the longest trail that still reaches the points. Help brings them nearer:
 * what care has lost, directness must make up for. A mark that no trail could reach any more is left out, and so is one
 * that every trail reaches. Length more or less than this attempt's is taken to lie outside of the corridor, where it counts
 * whole.
 */
export function parMarks(pass: Lesson["pass"], report: Report, record: AttemptRecord): ParMark[] {
  const directness = report.lines.find(({ what }) => what === "directness");
  if (!("points" in pass) || !directness) return [];
  const corridor = corridorOf(record.compiled);
  const weight = weightsOf(record).directness;
  const { trailDas = 0, outsideDas = 0 } = directness.figures;
  const freeDas = Math.max(
    Math.round((corridor.parDas * FREE_PAR_TENTHS) / 10),
    corridor.parDas + Math.round(corridor.fieldDas * CORRIDOR_HALF_FIELDS),
  );
  const excess = excessDas(corridor, { insideDas: trailDas - outsideDas, outsideDas });
  const unchargedDas = excess > 0 ? trailDas - excess : freeDas;
  const baseDas = Math.max(corridor.parDas, corridor.fieldDas);
  const others = pointsOf(report, "pins") + pointsOf(report, "care");
  return pass.points.flatMap((points, i) => {
    const wanted = points - others - 0.5;
    if (wanted >= weight || wanted <= 0) return [];
    const lengthDas = Math.round(unchargedDas + baseDas * (weight / wanted - 1));
    return [{ dots: (i + 1) as 1 | 2 | 3, lengthDas }];
  });
}
