/** The verbs of the eye: their shapes, exit codes and errors. */
import { describe, expect, it } from "vitest";
import { faintward, jsonOf } from "./faintward.ts";

type Limit = {
  limitMag: number;
  directMag: number;
  skyMu: number;
  exitPupilMm: number;
  trueFieldDeg: number;
  costsMag: Record<string, number>;
};
type Sight = {
  visible: boolean;
  marginMag: number;
  band: string;
  how: string;
  bestMagnification: number;
  skyMu: number;
};

describe("limit", () => {
  it("tells an instrument's limit and what it costs", () => {
    const told = jsonOf<Limit>(
      "limit",
      "--aperture=50",
      "--magnification=8",
      "--field=6",
      "--darkness=21",
      "--pupil=6.5",
      "--transmission=0.8",
      "--observer=2",
    );
    expect(Object.keys(told)).toEqual(["limitMag", "directMag", "skyMu", "exitPupilMm", "trueFieldDeg", "costsMag"]);
    expect(told.limitMag).toBeCloseTo(9.805, 2);
    expect([told.skyMu, told.exitPupilMm, told.trueFieldDeg]).toEqual([21, 6.25, 6]);
    expect(Object.keys(told.costsMag)).toEqual(["skyGlow", "moon", "twilight", "altitude", "optics", "eye"]);
  });

  it("counts altitude, eyes, skill and the Moon", () => {
    const of = (...more: string[]) => jsonOf<Limit>("limit", "--gear=finder-9x50", "--darkness=21", ...more).limitMag;
    const plain = of();
    expect(of("--altitude=25")).toBeLessThan(plain - 0.2);
    expect(of("--eyes=2")).toBeCloseTo(plain + 0.376, 2);
    expect(of("--observer=keen")).toBeCloseTo(plain + 0.387, 2);
    expect(of("--site=50,0,250", "--time=2027-08-17T22:00:00Z")).toBeLessThan(plain - 0.5);
  });
});

describe("see", () => {
  it("says yes with 0 and no with 1", () => {
    const shown = jsonOf<Sight>("see", "M 13", "--gear=finder-9x50", "--darkness=21");
    expect(shown).toMatchObject({ visible: true, band: "seen", skyMu: 21 });
    const call = ["see", "--magnitude=8.4", "--size=11.2x6.9", "--kind=galaxy", "--eye", "--darkness=21.5", "--json"];
    const { exit, out } = faintward(...call);
    expect(exit).toBe(1);
    const hidden = JSON.parse(out) as Sight;
    expect(Object.keys(hidden)).toEqual(["visible", "marginMag", "band", "how", "bestMagnification", "skyMu"]);
    expect(hidden).toMatchObject({ visible: false, band: "not", how: "no", bestMagnification: 1 });
    expect(hidden.marginMag).toBeCloseTo(-2.69, 1);
  });
});

describe("see, of a double star", () => {
  type Pair = Sight & { split: { isSplit: boolean; limit: string; neededArcsec: number; separationArcsec: number } };
  const of = (name: string, gear: string) => jsonOf<Pair>("see", name, gear, "--darkness=21").split;

  it("says whether it is seen as two, and what that asks for", () => {
    // Albireo, 34": one to the eye, two from ten powers on (common practice, no source); the eye's own 2'.
    expect(of("Albireo", "--eye")).toMatchObject({ isSplit: false, limit: "eye", neededArcsec: 120 });
    expect(of("Albireo", "--gear=finder-9x50").isSplit).toBe(true);
    // Castor, 5" (common practice, no source): one star in a finder, two at 48 times.
    expect(of("Castor", "--gear=finder-9x50").isSplit).toBe(false);
    expect(of("Castor", "--gear=newton200-48x").isSplit).toBe(true);
  });
  it("leaves other things without", () =>
    expect(jsonOf<Pair>("see", "M 13", "--eye", "--darkness=21")).not.toHaveProperty("split"));
});

describe("what cannot be used ends with 2", () => {
  it.each([
    [["limit", "--darkness=20"], /instrument is missing/],
    [["limit", "--eye"], /--darkness is missing/],
    [["limit", "--eye", "--gear=eye", "--darkness=20"], /--eye and --gear/],
    [["limit", "--eye", "--darkness=20", "--age=30", "--pupil=6"], /--age and --pupil/],
    [["limit", "--eye", "--darkness=20", "--observer=wizard"], /novice, typical, keen/],
    [["limit", "--eye", "--darkness=20", "--eyes=3"], /give 1 or 2/],
    [["limit", "--eye", "--darkness=20", "--site=50,0"], /--time is missing/],
    [["see", "--magnitude=8", "--size=5", "--kind=galaxie", "--eye", "--darkness=21"], /did you mean galaxy/],
    [["see", "M 13", "--kind=galaxy", "--eye", "--darkness=21"], /a name and --kind/],
    [["see", "--magnitude=8", "--size=5x", "--kind=galaxy", "--eye", "--darkness=21"], /--size 5x cannot be used/],
    [
      ["limit", "--aperture=300", "--magnification=6", "--field=3", "--obstruction=60", "--darkness=20"],
      /shadow of the secondary mirror fills/,
    ],
  ])("%j", (args, message) => {
    const { exit, out, err } = faintward(...args);
    expect([exit, out]).toEqual([2, ""]);
    expect(err).toMatch(message);
    expect(err.trim().split("\n").length).toBe(1);
  });
});
