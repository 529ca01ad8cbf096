import { describe, expect, test } from "vitest";
import { DEG } from "#core/celestial/vector.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { PRACTICE_LAYERS } from "#core/sky/practice/layers.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import table from "./data/tycho2Counts.json" with { type: "json" };

const { magnitudes, absLatitudeBandsDeg, areaSqDeg, perSqDeg } = table;
const COLUMNS = magnitudes.length;

/** Stars per band and limit over the whole sky of a seed, and all colours by the bins of the table. */
function census(seed: string): { counts: Float64Array; colours: number[][] } {
  const counts = new Float64Array(absLatitudeBandsDeg.length * COLUMNS);
  const colours: number[][] = table.colours.map(() => []);
  const edges = absLatitudeBandsDeg.map(([, to]) => Math.sin((to ?? 90) * DEG));
  const [px, py, pz] = planOf(seed).frame.galacticPole;
  for (const { layer, order } of PRACTICE_LAYERS.filter(({ faintestMilliMag }) => faintestMilliMag <= 11000)) {
    for (let pixel = 0; pixel < 12 << (2 * order); pixel++) {
      const { count, dirs, milliMag, colourBV } = generateTile(seed, { layer, order, pixel });
      for (let i = 0; i < count; i++) {
        const sine = Math.abs(dirs[3 * i]! * px + dirs[3 * i + 1]! * py + dirs[3 * i + 2]! * pz);
        const band = Math.max(
          0,
          Math.min(
            edges.length - 1,
            edges.findIndex((edge) => sine <= edge),
          ),
        );
        const column = magnitudes.findIndex((mag) => milliMag[i]! <= mag * 1000);
        for (let c = column; c < COLUMNS; c++) counts[band * COLUMNS + c]! += 1;
        const bin = table.colours.findIndex(({ toMag }) => milliMag[i]! <= toMag * 1000);
        colours[bin]!.push(colourBV[i]!);
      }
    }
  }
  return { counts, colours };
}

describe.each(["sallow", "heath"])("the whole sky of %s against the counts of Tycho-2", (seed) => {
  const { counts, colours } = census(seed);

  test("has as many stars in every band of galactic latitude, to 15 %, from V 6.5 to 11", () => {
    for (let band = 0; band < absLatitudeBandsDeg.length; band++) {
      magnitudes.forEach((mag, column) => {
        if (mag < 6.5) return;
        const wanted = perSqDeg[band]![column]! * areaSqDeg[band]!;
        const ratio = counts[band * COLUMNS + column]! / wanted;
        expect(Math.abs(ratio - 1), `|b| band ${band}, V ${mag}: ${ratio}`).toBeLessThan(0.15);
      });
    }
  });

  test("has no more and no fewer with its companions and clusters than without: to 6 % where there are many", () => {
    for (let band = 0; band < absLatitudeBandsDeg.length; band++) {
      magnitudes.forEach((mag, column) => {
        const wanted = perSqDeg[band]![column]! * areaSqDeg[band]!;
        if (wanted < 6000) return;
        const ratio = counts[band * COLUMNS + column]! / wanted;
        expect(Math.abs(ratio - 1), `|b| band ${band}, V ${mag}: ${ratio}`).toBeLessThan(0.06);
      });
    }
  });

  test("has as many bright stars in all, within what chance allows", () => {
    magnitudes.forEach((mag, column) => {
      const wanted = table.allSky[column]!;
      let found = 0;
      for (let band = 0; band < absLatitudeBandsDeg.length; band++) found += counts[band * COLUMNS + column]!;
      expect(Math.abs(found - wanted), `V ${mag}: ${found}`).toBeLessThan(4 * Math.sqrt(wanted) + 0.05 * wanted + 2);
    });
  });

  test("has the colours, quantile by quantile, to 0.08 mag", () => {
    table.colours.forEach(({ toMag, quantiles }, bin) => {
      const sorted = colours[bin]!.sort((a, b) => a - b);
      if (sorted.length < 3000) return;
      [0.05, 0.25, 0.5, 0.75, 0.95].forEach((share, i) => {
        const found = sorted[Math.floor(share * sorted.length)]!;
        expect(Math.abs(found - quantiles[i]!), `to V ${toMag}, ${share}: ${found}`).toBeLessThan(0.08);
      });
    });
  });
});
