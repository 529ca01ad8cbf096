/** Counts by galactic longitude beside those of Tycho-2. */
import { describe, expect, test } from "vitest";
import { galacticPlace } from "#core/sky/practice/density.ts";
import { generateTile } from "#core/sky/practice/generateTile.ts";
import { PRACTICE_LAYERS } from "#core/sky/practice/layers.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import clumps from "./data/tycho2Clumps.json" with { type: "json" };
import counts from "./data/tycho2Counts.json" with { type: "json" };

const SEEDS = ["heath", "fold"];
const OCTANTS = 8;
const { absLatitudeBandsDeg, areaSqDeg } = counts;

/** Stars to V per square degree in each band of |b| and eighth of longitude about 0, 45 .. 315 degrees: the mean of the seeds. */
function perSqDeg(toMag: number): number[][] {
  const found = absLatitudeBandsDeg.map(() => new Array<number>(OCTANTS).fill(0));
  const place = { latDeg: 0, lonDeg: 0 };
  for (const seed of SEEDS) {
    const { frame } = planOf(seed);
    for (const { layer, order } of PRACTICE_LAYERS.filter(({ faintestMilliMag }) => faintestMilliMag <= toMag * 1000)) {
      for (let pixel = 0; pixel < 12 << (2 * order); pixel++) {
        const { count, dirs } = generateTile(seed, { layer, order, pixel });
        for (let i = 0; i < count; i++) {
          galacticPlace(frame, [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!], place);
          const band = absLatitudeBandsDeg.findIndex(([, to]) => Math.abs(place.latDeg) <= to!);
          found[band]![Math.round(place.lonDeg / 45) % OCTANTS]! += 1;
        }
      }
    }
  }
  return found.map((row, band) => row.map((stars) => (stars * OCTANTS) / SEEDS.length / areaSqDeg[band]!));
}

describe.each(clumps.octants)("to V $toMag", ({ toMag, perSqDeg: counted }) => {
  const grown = perSqDeg(toMag);

  test("each eighth of each band has the stars that were counted, to 15 %; in the plane, where they change most, to three tenths", () => {
    for (let band = 0; band < counted.length; band++)
      for (let octant = 0; octant < OCTANTS; octant++) {
        const ratio = grown[band]![octant]! / counted[band]![octant]!;
        expect(Math.abs(ratio - 1), `|b| band ${band}, l ${45 * octant}: ${ratio}`).toBeLessThan(
          band === 0 ? 0.3 : 0.15,
        );
      }
  });
});
