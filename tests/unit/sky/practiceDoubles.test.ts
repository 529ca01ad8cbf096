/** Double stars and small figures that the catalogue of a practice sky lists: they are there, and a person sees them. */
import { describe, expect, test } from "vitest";
import { DEG, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { seenField } from "#core/field/seenField.ts";
import { visibleStars } from "#core/field/visibleStars.ts";
import { gearById } from "#core/optics/gear.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, SkyObject, StarSource } from "#core/seams/index.ts";
import { type FoundStar, starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { findByName } from "#core/sky/names/findByName.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import { practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";

const SEEDS = ["sallow", "lantern", "heath", "briar", "fold", "beck"];
const ARCSEC = DEG / 3600;
const never = new AbortController().signal;

async function starsAt(source: StarSource, centre: Dir, radiusRad: number, limitMag: number): Promise<FoundStar[]> {
  const cone = { centre, radiusRad };
  await source.want(source.resident(cone, limitMag).missing, 0, never);
  return starsWithin(source.resident(cone, limitMag), centre, radiusRad, Math.round(1000 * limitMag));
}

const ofKind = (seed: string, kind: SkyObject["kind"]) => practiceObjects(seed).filter((each) => each.kind === kind);

describe.each(SEEDS)("the catalogue of %s", (seed) => {
  const objects = practiceObjects(seed);
  const source = createPracticeSource(seed);

  test("numbers its objects on and on: double stars, figures and great clouds after all others", () => {
    const number = ({ names }: SkyObject) => Number(names.at(-1)!.split(" ").at(-1));
    expect(objects.map(number)).toEqual(objects.map((_, i) => i + 1));
    const kinds = objects.map(({ kind }) => kind);
    const first = kinds.indexOf("doubleStar");
    expect(first).toBe(2 + planOf(seed).wild.length);
    expect(new Set(kinds.slice(0, first))).not.toContain("asterism");
    expect(kinds.slice(kinds.indexOf("asterism"), -4).every((kind) => kind === "asterism")).toBe(true);
    expect(kinds.slice(-4)).toEqual(["darkNebula", "darkNebula", "darkNebula", "darkNebula"]);
  });

  test("lists some dozens of double stars, each measured as its two stars stand in the sky", async () => {
    const doubles = ofKind(seed, "doubleStar");
    expect(doubles.length).toBeGreaterThan(80);
    for (const { dir, double } of doubles) {
      const { separationArcsec, positionAngleDeg, magV, epochYear } = double!;
      expect(epochYear).toBe(2000);
      const about = await starsAt(source, dir, 1.1 * separationArcsec * ARCSEC, 10);
      const one = about.find((star) => separationRad(star.dir, dir) < 0.1 * ARCSEC)!;
      expect(Math.abs(one.milliMag / 1000 - magV[0])).toBeLessThan(0.051);
      const fits = (star: FoundStar) => {
        const apartArcsec = separationRad(one.dir, star.dir) / ARCSEC;
        const turnDeg = (positionAngleRad(one.dir, star.dir) / DEG - positionAngleDeg + 540) % 360;
        const slackDeg = 0.55 + (0.03 / separationArcsec) * (180 / Math.PI);
        return Math.abs(apartArcsec - separationArcsec) < 0.08 && Math.abs(turnDeg - 180) < slackDeg;
      };
      const other = about.find((star) => star !== one && fits(star));
      expect(Math.abs(other!.milliMag / 1000 - magV[1])).toBeLessThan(0.051);
    }
  });

  test("has figures of four to nine stars that nothing in them outshines, some as wide as a finder's field", async () => {
    const figures = ofKind(seed, "asterism");
    expect(figures.length).toBe(planOf(seed).asterisms.length);
    expect(figures.some(({ majorArcmin }) => majorArcmin > 100)).toBe(true);
    expect(figures.some(({ majorArcmin }) => majorArcmin < 30)).toBe(true);
    for (const { dir, stars, name } of planOf(seed).asterisms) {
      const [object] = findByName(name, practiceNames(seed), objects);
      expect([object?.kind, object?.dir]).toEqual(["asterism", dir]);
      const faintest = Math.max(...stars.map(({ milliMag }) => milliMag)) / 1000;
      const reachRad = 1.02 * Math.max(...stars.map((star) => separationRad(star.dir, dir)));
      const there = await starsAt(source, dir, reachRad, faintest);
      for (const star of stars)
        expect(
          there.filter((each) => separationRad(each.dir, star.dir) < ARCSEC && each.milliMag === star.milliMag),
        ).toHaveLength(1);
      expect(stars.length).toBeGreaterThanOrEqual(4);
      expect(stars.length).toBeLessThanOrEqual(9);
      // A person sees the figure and not the field it stands in.
      expect(there.length - stars.length).toBeLessThanOrEqual(stars.length / 2);
    }
  });
});

test("an eyepiece parts a listed pair: two stars where the list has them", async () => {
  const objects = practiceObjects("heath");
  const source = createPracticeSource("heath");
  const seeing = eyeSeeing(zenithConditions(20.8), objects);
  const gear = gearById("newton200-100x");
  const [pair] = ofKind("heath", "doubleStar").toSorted((a, b) => b.majorArcmin - a.majorArcmin);
  const input = { pointing: pair!.dir, gear, source, seeing, objects };
  await source.want(seenField(input).missing, 0, never);
  const field = seenField(input);
  const stars = visibleStars(
    field,
    viewFromIcrs(pair!.dir, [0, 0, 1], { rotationRad: 0, parity: 1 }, new Float64Array(9)),
  );
  const off = (i: number) => Math.hypot(stars.x[i]!, stars.y[i]!) * (gear.fieldDeg / 2) * 3600;
  const near = Array.from({ length: stars.count }, (_, i) => off(i)).filter(
    (arcsec) => arcsec < 1.05 * pair!.double!.separationArcsec,
  );
  expect(near.some((arcsec) => arcsec < 0.5)).toBe(true);
  expect(near.some((arcsec) => Math.abs(arcsec - pair!.double!.separationArcsec) < 1)).toBe(true);
  expect(field.objects.some(({ object }) => object.id === pair!.id)).toBe(true);
});
