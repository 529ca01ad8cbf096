import { describe, expect, test } from "vitest";
import { DEG, dirFromRadec, offsetDir, separationRad } from "#core/celestial/vector.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { emptyField, seenField } from "#core/field/seenField.ts";
import { visiblePatches } from "#core/field/visiblePatches.ts";
import { emptyStars, visibleStars } from "#core/field/visibleStars.ts";
import { GEAR, gearById } from "#core/optics/gear.ts";
import { fieldRadiusPlane, viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, GearId, Resident } from "#core/seams/index.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { planOf } from "#core/sky/practice/plan.ts";
import { practiceFacts, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";

const never = new AbortController().signal;
const ZENITH = dirFromRadec(337 * DEG, 50 * DEG);
const objects = practiceObjects("sallow");
const { anchor, cluster, galaxy } = practiceFacts("sallow");
const seeing = eyeSeeing(zenithConditions(20.8), objects);

/** A source with all tiles that the field of a gear needs. */
async function ready(pointing: Dir, id: GearId) {
  const source = createPracticeSource("sallow");
  const input = { pointing, gear: gearById(id), source, seeing, objects };
  await source.want(seenField(input).missing, 0, never);
  return input;
}

describe("the field that is seen", () => {
  test("names the tiles that are still to come", async () => {
    const source = createPracticeSource("sallow");
    const input = { pointing: anchor.dir, gear: gearById("finder-9x50"), source, seeing, objects };
    const before = seenField(input);
    expect(before.missing.length).toBeGreaterThan(0);
    expect(before.blocks).toEqual([]);
    await source.want(before.missing, 0, never);
    const after = seenField(input);
    expect(after.missing).toEqual([]);
    expect(after.version).not.toBe(before.version);
  });

  test.each([...GEAR.keys()])("holds every star of the field of %s down to its limit", async (id) => {
    const input = await ready(anchor.dir, id);
    const seen = seenField(input);
    const { avertedMilliMag, directMilliMag } = seeing.star(anchor.dir, 0.7, id);
    expect([seen.limitMilliMag, seen.directMilliMag]).toEqual([avertedMilliMag, directMilliMag]);
    const radiusRad = (input.gear.fieldDeg / 2) * DEG;
    const all = starsWithin(seen, anchor.dir, radiusRad, seen.limitMilliMag);
    const view = viewFromIcrs(anchor.dir, ZENITH, { parity: -1, rotationRad: 1 }, new Float64Array(9));
    const shown = visibleStars(seen, view);
    expect(shown.count).toBe(all.length);
    expect([...shown.milliMag.subarray(0, shown.count)].sort((a, b) => a - b)).toEqual(
      all.map((star) => star.milliMag),
    );
    // The anchor is in the middle.
    const bright = shown.milliMag.indexOf(Math.round(anchor.magV * 1000));
    expect(Math.hypot(shown.x[bright]!, shown.y[bright]!)).toBeLessThan(1e-4);
  });

  test("puts stars where the eye gets them: left of the zenith's way is left, mirrored is right", async () => {
    const input = await ready(anchor.dir, "binocular-10x50");
    const star = { dir: practiceFacts("sallow").clusterWay[0]!.dir };
    const pairMags = planOf("sallow").cluster.pair.map(({ milliMag }) => milliMag);
    const radius = fieldRadiusPlane(input.gear);
    for (const parity of [1, -1] as const) {
      const view = viewFromIcrs(anchor.dir, ZENITH, { parity, rotationRad: 0 }, new Float64Array(9));
      const shown = visibleStars(seenField(input), view);
      const pair = [...shown.milliMag.subarray(0, shown.count).entries()].filter(([, mag]) => pairMags.includes(mag));
      expect(pair.length).toBe(2);
      const x = pair.reduce((sum, [i]) => sum + shown.x[i]! / 2, 0);
      expect(x * parity).toBeLessThan(0);
      expect(Math.abs(x) * radius).toBeCloseTo(Math.tan(separationRad(anchor.dir, star.dir)), 3);
    }
  });

  test("tells which objects are seen, at the edge, or not there", async () => {
    const bands = (seen: ReturnType<typeof seenField>) => seen.objects.map(({ object, band }) => [object.id, band]);
    expect(bands(seenField(await ready(cluster.dir, "binocular-10x50")))).toEqual([["sallow-1", "seen"]]);
    expect(bands(seenField(await ready(galaxy.dir, "newton200-48x")))).toEqual([["sallow-2", "seen"]]);
    // The eye's wide field holds others, all beyond the practised part.
    const wide = seenField(await ready(galaxy.dir, "eye"));
    const near = wide.objects.filter(({ object }) => separationRad(object.dir, anchor.dir) < 9 * DEG);
    expect(near.map(({ object, band }) => [object.id, band])).toEqual([["sallow-1", "edge"]]);
    // Half of it reaches into the field.
    const halfDeg = galaxy.majorArcmin / 120;
    const beside = offsetDir(galaxy.dir, 0, (0.549 + halfDeg) * DEG);
    expect(seenField(await ready(beside, "newton200-48x")).objects.length).toBe(1);
    const away = offsetDir(galaxy.dir, 0, (0.551 + halfDeg) * DEG);
    expect(seenField(await ready(away, "newton200-48x")).objects.length).toBe(0);
  });

  test("tells of a glow where its middle is within the stop, and no further", async () => {
    const patchesAt = async (awayDeg: number) => {
      const pointing = offsetDir(galaxy.dir, 0, awayDeg * DEG);
      const seen = seenField(await ready(pointing, "newton200-48x"));
      expect(seen.objects.length).toBe(1);
      return visiblePatches(seen, viewFromIcrs(pointing, ZENITH, { parity: 1, rotationRad: 0 }, new Float64Array(9)));
    };
    expect((await patchesAt(0.551)).length).toBe(0);
    const [patch] = await patchesAt(0.549);
    expect(Math.hypot(patch!.x, patch!.y)).toBeCloseTo(0.549 / 0.55, 3);
  });

  test("asks for stars a fifth of a magnitude below the limit", () => {
    const asked: number[] = [];
    const source = {
      ...createPracticeSource("sallow"),
      resident: (_: unknown, limitMag: number) => {
        asked.push(limitMag);
        return { blocks: [], missing: [], complete: true, version: 1 };
      },
    };
    const seen = seenField({ pointing: anchor.dir, gear: gearById("finder-9x50"), source, seeing, objects });
    expect(asked).toEqual([seen.limitMilliMag / 1000 + 0.2]);
  });

  test("reckons the limit once for a place, an instrument and a night", async () => {
    const input = await ready(anchor.dir, "finder-9x50");
    let asked = 0;
    const counting = {
      ...seeing,
      star: (...of: Parameters<typeof seeing.star>) => {
        asked += 1;
        return seeing.star(...of);
      },
    };
    const field = emptyField();
    const look = (change: Partial<Parameters<typeof seenField>[0]> = {}) => {
      seenField({ ...input, seeing: counting, ...change }, field);
      return asked;
    };
    expect([look(), look(), look({ pointing: [...anchor.dir] })]).toEqual([1, 1, 1]);
    expect(look({ pointing: cluster.dir })).toBe(2);
    expect(look({ pointing: cluster.dir, gear: gearById("binocular-10x50") })).toBe(3);
    const other = eyeSeeing(zenithConditions(18), objects);
    look({ pointing: cluster.dir, gear: gearById("binocular-10x50"), seeing: other });
    expect(field.limitMilliMag).toBe(other.star(cluster.dir, 0.7, "binocular-10x50").avertedMilliMag);
  });

  test("fills what it is given, and counts a change of objects", async () => {
    const input = await ready(cluster.dir, "binocular-10x50");
    const field = emptyField();
    expect(seenField(input, field)).toBe(field);
    const { objects: list, objectsVersion, version, blocks } = field;
    const first = list[0];
    seenField(input, field);
    expect(field.objects).toBe(list);
    expect(field.objects[0]).toBe(first);
    expect(field.blocks).toBe(blocks);
    expect([field.objectsVersion, field.version]).toEqual([objectsVersion, version]);
    seenField({ ...input, objects: [] }, field);
    expect(field.objects).toEqual([]);
    expect(field.objectsVersion).toBe(objectsVersion + 1);
  });

  test.each(["eye", "sight"])("joins close pairs in %s, where nothing magnifies, and nowhere else", async (id) => {
    const input = await ready(anchor.dir, id);
    const { blocks } = input.source.resident({ centre: anchor.dir, radiusRad: (input.gear.fieldDeg / 2) * DEG }, 6.5);
    const bright = (of: Pick<Resident, "blocks">) => starsWithin(of, anchor.dir, 20 * DEG, 6500);
    const isClose = (stars: ReturnType<typeof bright>) =>
      stars.some(({ dir }, i) => stars.slice(i + 1).some((other) => separationRad(dir, other.dir) < (3 / 60) * DEG));
    expect(isClose(bright({ blocks }))).toBe(true);
    const field = emptyField();
    expect(isClose(bright(seenField(input, field)))).toBe(false);
    const [joined, version] = [field.blocks, field.version];
    seenField(input, field);
    expect([field.blocks, field.version]).toEqual([joined, version]);
    expect(field.blocks).toBe(joined);
    // The same tiles in an instrument: other stars, and the field says so.
    const gear = { ...input.gear, magnification: 9 };
    expect(seenField({ ...input, gear }, field).version).not.toBe(version);
    expect(isClose(bright(field))).toBe(true);
  });

  test("lets the list of stars grow past its first size", async () => {
    const input = await ready(anchor.dir, "binocular-10x50");
    const view = viewFromIcrs(anchor.dir, ZENITH, { parity: 1, rotationRad: 0 }, new Float64Array(9));
    const small = emptyStars(4);
    const large = visibleStars(seenField(input), view);
    expect(visibleStars(seenField(input), view, small)).toBe(small);
    expect(small.count).toBe(large.count);
    expect([...small.x.subarray(0, small.count)]).toEqual([...large.x.subarray(0, large.count)]);
    expect(visibleStars(seenField(input), view, small, 6000).count).toBeLessThan(10);
  });

  test.each(["eye", "newton200-48x"])(
    "makes next to nothing on the heap in a look through %s that changes nothing",
    async (id) => {
      const input = await ready(anchor.dir, id);
      const field = emptyField();
      const looks = (times: number) => {
        for (let i = 0; i < times; i++) seenField(input, field);
      };
      looks(3000);
      const made = Array.from({ length: 9 }, () => {
        const before = process.memoryUsage().heapUsed;
        looks(200);
        return (process.memoryUsage().heapUsed - before) / 200;
      });
      // The middle one: a collection in between makes one look like a gift. Lists and tiles would be tens of kilobytes.
      expect(made.sort((a, b) => a - b)[4]).toBeLessThan(6000);
    },
  );
});
