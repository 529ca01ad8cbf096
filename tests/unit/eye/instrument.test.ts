import { describe, expect, it } from "vitest";
import { scintillation } from "#core/eye/air.ts";
import { skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { costsOf } from "#core/eye/costs.ts";
import { dawesArcsec, splitOf } from "#core/eye/doubles.ts";
import { atTheEye, litFactor, type Optics, starLimits } from "#core/eye/instrument.ts";
import { bestPower, type Glass, NO_MARGIN_MAG, objectMargin, patchMargin } from "#core/eye/margin.ts";
import { nightUnder } from "#core/eye/nightSky.ts";
import { nakedLimitMag } from "#core/eye/threshold.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir } from "#core/seams/index.ts";

const UP: Dir = [1, 0, 0];
const EYE = { fieldFactor: 2, pupilMm: 6.5 };
const glass: Glass = {
  kind: "eyepiece",
  apertureMm: 200,
  magnification: 40,
  obstructionMm: 0,
  transmission: 0.8,
  eyes: 1,
  fieldDeg: 1,
};
const limits = (optics: Optics, mu: number, seeingArcsec = 0) => {
  const now = { ...zenithConditions(mu, EYE), seeingArcsec };
  return starLimits(optics, now, skyHere(now, UP));
};

describe("a glass at the eye", () => {
  it("dims by the light that its exit pupil lets through, less what the second mirror shades", () => {
    const dimming = (of: Partial<Optics>) => atTheEye({ ...glass, ...of }, EYE, 21).dimming;
    // Exit pupil 5 mm in a pupil of 6.5; a mirror of 50 mm shades 1.25 of it; at 20 times the pupil cuts 10 mm to 6.5.
    expect(dimming({})).toBeCloseTo((0.8 * 25) / 42.25, 12);
    expect(dimming({ obstructionMm: 50 })).toBeCloseTo((0.8 * (25 - 1.5625)) / 42.25, 12);
    expect(dimming({ obstructionMm: 50, magnification: 20 })).toBeCloseTo((0.8 * (42.25 - 6.25)) / 42.25, 12);
    expect(dimming({ kind: "sight" })).toBe(1);
  });

  it("loses of a star's light, where its image is wider than 900 arcsec at the eye, by the root of how much wider", () => {
    const lost = (seeingArcsec: number) => limits(glass, 21).avertedMag - limits(glass, 21, seeingArcsec).avertedMag;
    expect([lost(20), lost(22.4)]).toEqual([0, 0]);
    expect(lost(40)).toBeCloseTo(2.5 * Math.log10(Math.sqrt(1600 / 900)), 3);
    expect(limits(gearById("eye"), 21, 1000)).toEqual(limits(gearById("eye"), 21));
  });

  it("asks the naked eye for more light under a lit sky: 0.3 more a magnitude from 20 to 18", () => {
    expect([22, 20, 19, 18.5, 18, 15].map((mu) => Number(litFactor(mu).toFixed(9)))).toEqual([
      1, 1, 1.3, 1.45, 1.6, 1.6,
    ]);
  });

  it("shows to a stare what cones see, and a magnitude and a half less than free gaze at least", () => {
    const dark = limits(gearById("eye"), 21.8);
    expect(dark.avertedMag - dark.directMag).toBeCloseTo(1.5, 9);
    // Under a bright sky the cones count, root 2 less of them with one eye; and 1.5 mag are never lost.
    const [one, two] = [limits(glass, 17), limits({ ...glass, eyes: 2 }, 17)];
    expect(one.avertedMag - one.directMag).toBeLessThan(1.3);
    expect(two.directMag - one.directMag).toBeCloseTo(2.5 * Math.log10(Math.SQRT2), 9);
  });
});

describe("what an observer is taken for, where nothing is said", () => {
  it("a typical one of forty, under a common night's air of 2.5 arcsec (common practice, no source)", () => {
    const { observer, seeingArcsec } = zenithConditions(21);
    expect([observer.fieldFactor, seeingArcsec]).toEqual([2, 2.5]);
    // 7 exp(-0.5 (age / 100)^2) (Schaefer 1990, eq. 5).
    expect(observer.pupilMm).toBeCloseTo(6.46, 2);
  });
});

describe("what limits the view", () => {
  const best: Optics = { ...glass, transmission: 1, eyes: 2 };
  const now = { ...zenithConditions(22, { fieldFactor: 1.4, pupilMm: 7 }), seeingArcsec: 0 };
  const costs = (optics: Optics, change: Partial<typeof now> = {}) => costsOf(optics, { ...now, ...change }, UP);
  const nothing = { skyGlow: 0, moon: 0, twilight: 0, altitude: 0, optics: 0, eye: 0 };

  it("is nothing where sky, glass and eye are the best", () => {
    expect(costs(best)).toEqual(nothing);
    expect(costs(best, { darknessMu: 22.2 })).toEqual(nothing);
  });

  it("is each thing that is worse by itself, by as much as the limit falls", () => {
    const limitOf = (optics: Optics, change: Partial<typeof now> = {}) => {
      const here = { ...now, ...change };
      return starLimits(optics, here, skyHere(here, UP)).avertedMag;
    };
    const fall = (optics: Optics, change: Partial<typeof now> = {}) => limitOf(best) - limitOf(optics, change);
    expect(costs(best, { darknessMu: 21.9 })).toEqual({ ...nothing, skyGlow: fall(best, { darknessMu: 21.9 }) });
    const [dull, one] = [
      { ...best, transmission: 0.9, obstructionMm: 60 },
      { ...best, eyes: 1 as const },
    ];
    expect(costs(dull).optics).toBeCloseTo(fall(dull), 9);
    expect(costs(dull).optics).toBeGreaterThan(0.03);
    expect(costs(one).eye).toBeCloseTo(2.5 * Math.log10(Math.SQRT2), 9);
    const typical = { fieldFactor: 2, pupilMm: 7 };
    expect(costs(best, { observer: typical }).eye).toBeCloseTo(2.5 * Math.log10(2 / 1.4), 9);
    const eye = gearById("eye");
    expect(costs(eye, { darknessMu: 20.5 }).skyGlow).toBeCloseTo(nakedLimitMag(22, 2) - nakedLimitMag(20.5, 2), 9);
  });
});

describe("double stars", () => {
  it("of five magnitudes' difference ask for 6.3 times Dawes' limit (after Lewis 1914, from memory), in air for half its blur", () => {
    expect(splitOf(9, 5, 50, 400).neededArcsec / dawesArcsec(50)).toBeCloseTo(10 ** 0.8, 9);
    expect(splitOf(9, 0, 200, 400, 4)).toEqual({ neededArcsec: 2, limit: "air", isSplit: true });
  });
});

describe("what is larger than the field", () => {
  const now = zenithConditions(21, EYE);
  const here = skyHere(now, UP);
  it("is judged by a part that the field holds one and a half times", () => {
    const even = { kind: "galaxy", magV: 8, majorArcmin: 60, minorArcmin: 60, profile: "uniform" } as const;
    const shareIn = (fieldDeg: number) => patchMargin(even, atTheEye(glass, EYE, 21), here, fieldDeg).share;
    expect([shareIn(2), shareIn(0.75), shareIn(0.375)]).toEqual([1, 0.48, 0.24]);
  });

  it("as a cluster shows a fifth star 2.15 mag fainter where the field holds a quarter of it, and 3.3 below the whole where all", () => {
    const cluster = { kind: "openCluster", magV: 9, majorArcmin: 120, minorArcmin: 120, profile: "members" } as const;
    const marginIn = (fieldDeg: number) => objectMargin(cluster, { ...glass, fieldDeg }, now, here);
    expect(marginIn(2)).toBeCloseTo(starLimits(glass, now, here).avertedMag - 9 - 3.3, 9);
    expect(marginIn(2) - marginIn(1)).toBeCloseTo((2 * Math.log10(2)) / 0.28, 9);
  });
});

describe("an object's margin", () => {
  const now = zenithConditions(20, EYE);
  const here = skyHere(now, UP);
  const uniform = (magV: number, majorArcmin: number, minorArcmin = majorArcmin) =>
    ({ kind: "galaxy", magV, majorArcmin, minorArcmin, profile: "uniform" }) as const;

  it("of an even patch is what the equations give by hand: V 8.4, 11.2' by 6.9', 150 mm at 75 times, sky 20", () => {
    const at75 = { ...glass, apertureMm: 150, magnification: 75 };
    // Surface brightness 21.7 (Crumey 2014, eq. 41; worked out apart).
    expect(objectMargin(uniform(8.4, 11.2, 6.9), at75, now, here)).toBeCloseTo(-0.17, 2);
  });

  it("is best between exit pupils of 7 and 0.8 mm: widest for what is large and faint, narrowest for what is small", () => {
    const wide = { ...glass, fieldDeg: 40 };
    // An eye whose pupil takes in 8 mm is given no more than 7.
    const open = { ...now, observer: { ...EYE, pupilMm: 8 } };
    expect(bestPower(uniform(4, 200), wide, open, here).magnification).toBeCloseTo(200 / 7, 9);
    const most = bestPower(uniform(11, 0.3), wide, now, here).magnification;
    expect(most).toBeGreaterThan(200 / 0.8 / 1.05);
    expect(most).toBeLessThan(1.05 * (200 / 0.8));
  });

  it("is far below any edge where a thing gives no light, or is unknown", () => {
    expect(objectMargin(uniform(99, 5), glass, now, here)).toBe(NO_MARGIN_MAG);
    expect(NO_MARGIN_MAG).toBeLessThan(-50);
  });
});

describe("a night as the page shows it", () => {
  const night = nightUnder(zenithConditions(21, EYE), 800, []);
  it("is darker before the eye by what the glass dims", () => {
    const gear = gearById("newton200-48x");
    const { dimming } = atTheEye(gear, EYE, 21);
    expect(night.atTheEyeMu(UP, gear.id)).toBeCloseTo(21 - 2.5 * Math.log10(dimming), 9);
    expect(night.atTheEyeMu(UP, "eye")).toBe(21);
  });
  it("shakes the stars of each glass as its aperture and the site's height have it, at the zenith", () => {
    for (const id of ["eye", "finder-9x50", "newton200-48x"])
      expect(night.zenithScatter(id)).toBe(scintillation(gearById(id).apertureMm, 1, 800));
  });
});
