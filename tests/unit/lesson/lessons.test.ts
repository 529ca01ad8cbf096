/** What the lessons that come along say of the sky, held against the sky. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { DEG, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { skyLookup } from "#core/lesson/skyLookups.ts";
import { findSpot, spotName } from "#core/lesson/spots.ts";
import type { Lesson, Spot } from "#core/lesson/types.ts";
import { sentencesOf, wordCount } from "#core/lesson/words.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir, StarSource } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";

const folder = new URL("../../../lessons/", import.meta.url);
const text = (name: string) => readFileSync(new URL(name, folder), "utf8");
const names = readdirSync(folder).filter((name) => name.endsWith(".yaml"));
const lessonOf = (id: string) => checkLesson(`${id}.yaml`, text(`${id}.yaml`), realLookups).lesson!;

function placesOf(lesson: Lesson) {
  const sky = realLookups.sky(lesson);
  const dirOf = (spot: Spot): Dir => findSpot(spot, sky)!.dir;
  const zenith = zenithDir(horizonFromIcrs(lesson.place, Date.parse(lesson.time)));
  const apartDeg = (a: Spot, b: Spot) => separationRad(dirOf(a), dirOf(b)) / DEG;
  /** Bearing of b from a as seen facing them: counter-clockwise from straight up, -180 to 180. */
  const leftOfUpDeg = (a: Spot, b: Spot) => {
    const turn = (positionAngleRad(dirOf(a), dirOf(b)) - positionAngleRad(dirOf(a), zenith)) / DEG;
    return ((turn + 540) % 360) - 180;
  };
  const fields = (a: Spot, b: Spot) => apartDeg(a, b) / gearById(lesson.gear.hopping).fieldDeg;
  return { dirOf, apartDeg, leftOfUpDeg, fields };
}

async function starsAbout(source: StarSource, centre: Dir, radiusDeg: number, limitMag: number) {
  const cone = { centre, radiusRad: radiusDeg * DEG };
  await source.want([...source.resident(cone, limitMag).missing], 0, new AbortController().signal);
  return starsWithin(source.resident(cone, limitMag), centre, radiusDeg * DEG, limitMag * 1000);
}
const catalogue = createCatalogueSource({
  fetchFile: async (name) => new Uint8Array(readFileSync(new URL(`../assets/sky/${name}`, folder))).buffer,
});

describe.each(names)("%s", (name) => {
  const { lesson, findings } = checkLesson(name, text(name), realLookups);

  it("has no findings", () => {
    expect(findings).toEqual([]);
    expect(`${lesson?.id}.yaml`).toBe(name);
  });

  it("speaks in short sentences: 14 words in the mean, 22 at most", () => {
    const { briefing, stages, afterwards } = lesson!;
    const said = [...briefing, ...afterwards];
    for (const { hop } of stages) {
      const { codes, ...after } = hop.after;
      said.push(
        ...hop.steps.map(({ say }) => say),
        ...hop.hints.flat(),
        ...Object.values(after),
        ...Object.values(codes),
      );
    }
    const counts = said.flatMap(sentencesOf).map(wordCount);
    expect(Math.max(...counts)).toBeLessThanOrEqual(22);
    expect(counts.reduce((sum, count) => sum + count, 0) / counts.length).toBeLessThanOrEqual(14);
  });

  it("maps to a hop at every stage", () => {
    for (const [stage, { hop }] of lesson!.stages.entries()) {
      const spec = toHopSpec(lesson!, stage, realLookups);
      expect(spec.ways.map(({ marks }) => marks.length)).toEqual(hop.ways.map(({ marks }) => marks.length));
      expect(spec.ways.every(({ marks }) => marks[0]!.dir.raMas === spec.anchor.raMas)).toBe(true);
    }
  });
});

describe("1-01 says what is true of its sky", () => {
  const lesson = lessonOf("1-01");
  const { dirOf, apartDeg, leftOfUpDeg } = placesOf(lesson);

  it("the cluster lies one and a half fingers to the left of Orlo, past two equal stars", () => {
    expect(apartDeg("Orlo", "Rowanberries")).toBeCloseTo(1.5, 2);
    expect(leftOfUpDeg("Orlo", "Rowanberries")).toBeGreaterThan(70);
    expect(leftOfUpDeg("Orlo", "Rowanberries")).toBeLessThan(110);
    expect(apartDeg("Orlo", "the two equal stars")).toBeLessThan(1);
    expect(Math.abs(leftOfUpDeg("Orlo", "the two equal stars") - leftOfUpDeg("Orlo", "Rowanberries"))).toBeLessThan(5);
  });

  it("Orlo is a star of 2 and the brightest within a field", async () => {
    const [brightest, second] = await starsAbout(createPracticeSource("sallow"), dirOf("Orlo"), 6.5, 6);
    expect(separationRad(brightest!.dir, dirOf("Orlo")) / DEG).toBeLessThan(0.01);
    expect(Math.round(brightest!.milliMag / 1000)).toBe(2);
    expect(second!.milliMag).toBeGreaterThan(brightest!.milliMag + 500);
  });
});

describe("3-03 says what is true of its sky", () => {
  const { dirOf, apartDeg, leftOfUpDeg, fields } = placesOf(lessonOf("3-03"));

  it("M 27 lies 3.2 degrees due north of gamma Sge, three fifths of a field, and north is up", () => {
    expect(apartDeg("gamma Sge", "M 27")).toBeCloseTo(3.2, 1);
    expect(fields("gamma Sge", "M 27")).toBeCloseTo(0.6, 1);
    const angleDeg = positionAngleRad(dirOf("gamma Sge"), dirOf("M 27")) / DEG;
    expect(angleDeg).toBeLessThan(5);
    expect(Math.abs(leftOfUpDeg("gamma Sge", "M 27"))).toBeLessThan(15);
  });

  it("the Arrow points left and gamma is its brightest star", () => {
    for (const other of ["alpha Sge", "beta Sge", "delta Sge"]) {
      expect(leftOfUpDeg(other, "gamma Sge")).toBeGreaterThan(45);
      expect(leftOfUpDeg(other, "gamma Sge")).toBeLessThan(135);
      const { find } = skyLookup("catalogue");
      expect(find("gamma Sge")!.magV!).toBeLessThan(find(other)!.magV!);
    }
  });

  it("a star of 5.7 stands two fifths of a degree beyond the cloud, alone in its brightness", async () => {
    const near = await starsAbout(catalogue, dirOf("M 27"), 0.7, 6.2);
    expect(near.map(({ milliMag }) => Math.round(milliMag / 100) / 10)).toEqual([5.7]);
    expect(separationRad(near[0]!.dir, dirOf("M 27")) / DEG).toBeCloseTo(0.4, 1);
    expect(separationRad(near[0]!.dir, dirOf("gamma Sge")) / DEG).toBeGreaterThan(apartDeg("gamma Sge", "M 27"));
  });

  it("the cloud is as wide as an eighth of the eyepiece's field", () => {
    const { object } = skyLookup("catalogue").find("M 27")!;
    expect(object!.majorArcmin / 66).toBeCloseTo(1 / 8, 1);
  });
});

describe("3-04s says what is true of its sky", () => {
  const lesson = lessonOf("3-04s");
  const { dirOf, apartDeg, leftOfUpDeg, fields } = placesOf(lesson);
  const [first, second] = lesson.stages[0]!.hop.ways;
  const starOfFive = first!.marks[1]!;
  const starOfSix = second!.marks[1]!;

  it("from beta to epsilon it is 7.6 degrees, from there on 6.3: nearly as far again", () => {
    expect(apartDeg("beta Cen", "epsilon Cen")).toBeCloseTo(7.6, 1);
    expect(apartDeg("epsilon Cen", "NGC 5139")).toBeCloseTo(6.3, 1);
    const bend = leftOfUpDeg("epsilon Cen", "NGC 5139") - leftOfUpDeg("beta Cen", "epsilon Cen");
    expect(Math.abs(bend)).toBeLessThan(20);
  });

  it("epsilon is up and to the left of beta, and the star of five of epsilon", () => {
    for (const [from, to] of [
      ["beta Cen", "epsilon Cen"],
      ["epsilon Cen", starOfFive],
    ] as const) {
      expect(leftOfUpDeg(from, to)).toBeGreaterThan(15);
      expect(leftOfUpDeg(from, to)).toBeLessThan(75);
    }
  });

  it("the second step is a third longer than half a field, and bends to the left", () => {
    expect(fields("epsilon Cen", starOfFive)).toBeCloseTo(0.5, 1);
    expect(fields(starOfFive, "NGC 5139")).toBeCloseTo(0.7, 1);
    expect(apartDeg(starOfFive, "NGC 5139") / apartDeg("epsilon Cen", starOfFive)).toBeCloseTo(4 / 3, 1);
    expect(leftOfUpDeg(starOfFive, "NGC 5139") - leftOfUpDeg("epsilon Cen", starOfFive)).toBeGreaterThan(20);
  });

  it.each([
    [spotName(starOfFive), starOfFive, 5],
    [spotName(starOfSix), starOfSix, 6],
  ])("%s stands where it is said, and as bright", async (_, spot, magV) => {
    const [star, ...others] = await starsAbout(catalogue, dirOf(spot), 0.05, 7);
    expect(others).toEqual([]);
    expect(Math.round(star!.milliMag / 1000)).toBe(magV);
  });

  it("no star within a field on that side is brighter than the star of five", async () => {
    const near = await starsAbout(catalogue, dirOf("epsilon Cen"), 5.3, 5.1);
    const towards = leftOfUpDeg("epsilon Cen", starOfFive);
    const onThatSide = near.filter(({ dir }) => {
      const turn =
        (positionAngleRad(dirOf("epsilon Cen"), dir) - positionAngleRad(dirOf("epsilon Cen"), dirOf(starOfFive))) / DEG;
      return separationRad(dir, dirOf("epsilon Cen")) > 0.1 * DEG && Math.abs(((turn + 540) % 360) - 180) < 45;
    });
    expect(towards).toBeGreaterThan(0);
    expect(onThatSide).toHaveLength(1);
  });

  it("the ball fills half of the eyepiece's field and is as bright as a star of four", () => {
    const { object } = skyLookup("catalogue").find("NGC 5139")!;
    expect(object!.majorArcmin / 66).toBeGreaterThan(0.4);
    expect(object!.majorArcmin / 66).toBeLessThan(0.9);
    expect(Math.round(object!.magV)).toBe(4);
  });
});
