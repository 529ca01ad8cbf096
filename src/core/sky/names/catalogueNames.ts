/** Names and figures of the catalogue sky, from the tables in `shared/`. */
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import figureTable from "#shared/figures.json";
import starTable from "#shared/stars.json";
import { constellations } from "./constellations.ts";
import { figureCentre } from "./figureCentre.ts";
import { signOfLetter } from "./letters.ts";
import type { Figure, FigureSegment, NamedStar, SkyNames } from "./types.ts";

let built: SkyNames | undefined;

/**
 * Some 860 named stars (the 330 brightest, every star of a figure and more), the lines and the figures of all 88
 * constellations. ICRS, places of epoch J2025.0 to 0.2". Built at the first call and kept.
 */
export function catalogueNames(): SkyNames {
  built ??= build();
  return built;
}

function build(): SkyNames {
  const stars = Object.entries(starTable.stars).flatMap(([con, rows]) => rows.map((row) => readStar(con, row)));
  stars.sort((a, b) => a.magV - b.magV || a.hip - b.hip);
  const byHip = new Map(stars.map((star) => [star.hip, star]));
  const segments: FigureSegment[] = [];
  const figures: Figure[] = [];
  for (const [abbr, strokes] of Object.entries(figureTable.strokes)) {
    const lines = strokes.flatMap((stroke) => segmentsOfStroke(abbr, stroke, byHip));
    segments.push(...lines);
    figures.push({ abbr, name: constellations().get(abbr)?.name ?? abbr, centre: figureCentre(lines) });
  }
  return { stars, segments, figures };
}

/** A row of the star table: HIP, place in degrees, V, B-V, letter or "", number or 0, and a proper name where it has one. */
function readStar(con: string, row: readonly (string | number)[]): NamedStar & { readonly hip: number } {
  const [hip, raDeg, decDeg, magV, colourBV, bayer, flamsteed, proper] = row;
  const letter = String(bayer);
  const number = Number(flamsteed);
  return {
    dir: dirFromRadec(Number(raDeg) * DEG, Number(decDeg) * DEG),
    hip: Number(hip),
    magV: Number(magV),
    colourBV: Number(colourBV),
    label: letter === "" ? String(number) : signOfLetter(letter),
    con,
    ...(number > 0 ? { flamsteed: number } : {}),
    ...(proper === undefined ? {} : { proper: String(proper) }),
  };
}

function segmentsOfStroke(figure: string, stroke: readonly number[], byHip: Map<number, NamedStar>): FigureSegment[] {
  return stroke.slice(1).map((hip, i) => {
    const from = byHip.get(stroke[i] ?? 0);
    const to = byHip.get(hip);
    if (!from || !to) throw new Error(`figure ${figure}: no star HIP ${from ? hip : stroke[i]} in the star table`);
    return { from: from.dir, to: to.dir, figure };
  });
}
