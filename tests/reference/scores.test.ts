/** The score against a reckoning of its rules by another program: whole points and lengths agree exactly. */
import { expect, it } from "vitest";
import { lengthOfMarksDas } from "#core/score/places.ts";
import { score } from "#core/score/report.ts";
import type { AttemptEvent, AttemptRecord, Band, CompiledAttempt, HopSpec, MasDir } from "#core/seams/index.ts";
import { compiledHop } from "../unit/score/attempts.ts";
import table from "./data/scores.json" with { type: "json" };

type Attempt = (typeof table.attempts)[number];

/** An attempt of the table as a record: what the score does not ask for is another hop's. */
function recordOf(attempt: Attempt): AttemptRecord {
  const ways = attempt.ways.map((dirs) => ({
    marks: dirs.map((dir, i) => ({ dir, name: `mark ${i}` })),
    lengthDas: lengthOfMarksDas(dirs),
  }));
  const target = { dir: attempt.ways[0]!.at(-1) as MasDir, sizeDas: attempt.sizeDas, objectId: "target" };
  const { hoppingGear, claimGear, anchor, weights } = attempt;
  const limits = attempt.limits.map(([gear, fieldDas]) => ({
    gear: gear as string,
    fieldDas: fieldDas as number,
    avertedMilliMag: 9000,
    directMilliMag: 8000,
  }));
  const spec: Partial<HopSpec> = {
    anchor,
    targets: [target],
    ways,
    hoppingGear,
    claimGear,
    weights,
    aids: attempt.aids as HopSpec["aids"],
    gear: limits.map(({ gear }) => gear),
  };
  const compiled: CompiledAttempt = {
    ...compiledHop(
      [
        [0, 0],
        [0, 1],
      ],
      spec,
    ),
    ways,
    parDas: Math.min(...ways.map(({ lengthDas }) => lengthDas)),
    hoppingFieldDas: limits.find(({ gear }) => gear === hoppingGear)!.fieldDas,
    limits,
    rivals: attempt.rivals.map((dir, i) => ({ dir, sizeDas: 0, objectId: `rival-${i}` })),
    targetBands: [attempt.band as Band],
  };
  const [tMs = [], raDas = [], decDas = [], byHand = [], mark = []] = attempt.trail;
  const trail = {
    tMs: Int32Array.from(tMs),
    raDas: Int32Array.from(raDas),
    decDas: Int32Array.from(decDas),
    byHand: Uint8Array.from(byHand),
    mark: Uint8Array.from(mark),
  };
  return { compiled, events: attempt.events as readonly AttemptEvent[], trail, lengthBeforeDas: 0, checksum: 0 };
}

it.each(table.attempts.map((attempt, i) => [i, attempt.wanted.word, attempt] as const))(
  "attempt %i: %s",
  (_, __, attempt) => {
    const record = recordOf(attempt);
    expect(record.compiled.parDas).toBe(attempt.par);
    const { word, points, trailDas, lines } = score(record);
    const byLine = Object.fromEntries(lines.map((line) => [line.what, line.points]));
    expect({ word, points, trailDas, lines: byLine }).toEqual(attempt.wanted);
  },
);
