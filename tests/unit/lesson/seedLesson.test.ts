import { describe, expect, test } from "vitest";
import { stringify } from "yaml";
import { fnv1a32 } from "#core/celestial/hash.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { SALLOWFELL_HILL } from "#core/lesson/sallowfellHill.ts";
import { seedHopOf } from "#core/lesson/seedLesson.ts";
import { planUnder } from "#core/lesson/seedPlan.ts";
import { SITE_SKIES, SITE_SKY_MU, type SiteSky } from "#core/lesson/siteSkies.ts";
import { skyLookups } from "#core/lesson/skyLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import { score } from "#core/score/report.ts";
import { record } from "#core/session/record.ts";
import { practiceFacts } from "#core/sky/practice/practiceSky.ts";
import { dailyId, freeId, seedOfId, seedTitle } from "../../../src/desk/seed/seedIds.ts";
import { seedLessonOf } from "../../../src/desk/seed/seedLessons.ts";
import { drawSeedWord } from "../../../src/desk/seed/words.ts";
import { practiceWorld, rehearsed } from "../rehearsal/practiceHops.ts";

const DAY_MS = 86_400_000;
const FIRST_MS = Date.parse("2026-11-25T12:00Z");
const DAYS = Array.from({ length: 60 }, (_, i) => dailyId(FIRST_MS + i * DAY_MS));
const lessonOf = (id: string): Lesson => seedLessonOf(id)!;

describe("the hop of a day's sky", () => {
  const outfits = new Set<string>();
  const targets = new Set<string>();
  test.each(DAYS)("%s is a lesson without a fault: anchor, marks and target are shown, each leg is short", (id) => {
    const { lesson, findings } = checkLesson(id, stringify(lessonOf(id)), realLookups);
    expect(findings).toEqual([]);
    expect(lesson).toEqual(lessonOf(id));
    outfits.add(lesson!.gear.hopping);
    targets.add(JSON.stringify(toHopSpec(lesson!, 0, realLookups).targets[0]!.dir));
  });

  test("is another on each of sixty days, with every set of instruments in turn", () => {
    expect([outfits.size, targets.size]).toEqual([4, DAYS.length]);
  });

  test("is the same at every hour of a day by UTC, and another on the next", () => {
    expect(dailyId(Date.parse("2026-11-25T00:00:00Z"))).toBe(dailyId(Date.parse("2026-11-25T23:59:59Z")));
    expect(dailyId(Date.parse("2026-11-25T23:59:59.999-01:00"))).toBe("daily-2026-11-26");
  });

  test("has the hash of every engine (another practice sky: npx vitest run tests/unit/lesson/seedLesson.test.ts -u)", () => {
    const told = DAYS.slice(0, 4).map((id) => JSON.stringify(toHopSpec(lessonOf(id), 0, realLookups)));
    expect(fnv1a32(new TextEncoder().encode(told.join()))).toMatchInlineSnapshot(`818303658`);
  });

  test.each([0, 3, 5, 8, 13, 21, 34, 55])(
    "day %i of sixty can be done by one who sees field and page alone",
    async (day) => {
      const lesson = lessonOf(DAYS[day]!);
      const { objects } = realLookups.sky(lesson);
      const world = { ...practiceWorld(seedOfId(lesson.id).word), objects, seeing: realLookups.seeing(lesson) };
      const { session } = await rehearsed(toHopSpec(lesson, 0, realLookups), world);
      const report = score(record(session));
      expect(report.word).toBe("found");
      expect(report.points).toBeGreaterThanOrEqual(90);
    },
  );
});

describe("free practice under a site's sky", () => {
  const WORDS = ["peat-lane", "heath", "tarn", "day-3", "fold-gate", "marl-ford", "ling-barn", "2027-10-29"];
  const under = (sky: SiteSky) => WORDS.map((word) => freeId(word, sky)!);
  const goalsUnder = (sky: SiteSky) => WORDS.map((word) => seedHopOf(word, SITE_SKY_MU[sky]).goal);

  test.each([...under("city"), ...under("suburb"), ...under("mountain")])(
    "%s is a lesson without a fault: what it seeks, starts from and passes is shown there",
    (id) => {
      const { lesson, findings } = checkLesson(id, stringify(lessonOf(id)), realLookups);
      expect(findings).toEqual([]);
      expect(lesson).toEqual(lessonOf(id));
    },
  );

  test("nothing is sought that stands at the edge of what is seen", () => {
    for (const sky of SITE_SKIES)
      for (const id of under(sky)) {
        const lesson = lessonOf(id);
        const { targets } = toHopSpec(lesson, 0, realLookups);
        expect(realLookups.seeing(lesson).object(targets[0]!.objectId, lesson.gear.claim).band).toBe("seen");
      }
  });

  test("a city hides the galaxies, and a mountain none", () => {
    expect(goalsUnder("city")).not.toContain("galaxy");
    expect(new Set(goalsUnder("mountain"))).toEqual(new Set(["galaxy"]));
  });

  test("to a cluster it is further than one sees at once, from a star that outshines the mark", () => {
    const hops = WORDS.map((word) => seedHopOf(word, SITE_SKY_MU.city)).filter(({ goal }) => goal !== "nearCluster");
    expect(hops.length).toBeGreaterThan(WORDS.length / 2);
    for (const { legsDeg, hopping, seed, ways } of hops) {
      const magOf = (name: string) => skyLookups.sky(lessonOf(`free180-${seed}`)).find(name)!.magV!;
      expect(legsDeg[0]! + legsDeg[1]!).toBeGreaterThanOrEqual(3);
      expect(Math.max(...legsDeg)).toBeLessThanOrEqual(0.75 * gearById(hopping).fieldDeg);
      expect(magOf(ways[0]![0]!)).toBeLessThanOrEqual(magOf(ways[0]![1]!));
    }
  });

  test("where no star leads to a cluster, the one by the anchor is sought", () => {
    const place = { ...SALLOWFELL_HILL, skyMagPerArcsec2: 18 };
    const night = { place, utcMs: Date.parse("2027-10-29T20:00Z"), claim: gearById("newton200-48x") };
    const plan = planUnder("heath", 0, { ...night, hopping: { ...gearById("finder-9x50"), fieldDeg: 1 } });
    expect(plan).toMatchObject({ goal: "nearCluster", target: practiceFacts("heath").cluster });
  });

  test.each(["free180-peat-lane", "free180-heath", "free195-tarn", "free219-heath"])(
    "%s can be done by one who sees field and page alone",
    async (id) => {
      const lesson = lessonOf(id);
      const { objects } = realLookups.sky(lesson);
      const world = { ...practiceWorld(seedOfId(id).word), objects, seeing: realLookups.seeing(lesson) };
      const { session } = await rehearsed(toHopSpec(lesson, 0, realLookups), world);
      expect(score(record(session)).word).toBe("found");
    },
  );

  test("the sky goes with the id: reloaded, shared and printed it is the same hop; without one it is the hill's", () => {
    expect(freeId("Peat Lane", "city")).toBe("free180-peat-lane");
    expect(seedOfId("free180-peat-lane")).toEqual({ word: "peat-lane", sky: "city" });
    expect(seedTitle("free180-peat-lane")).toBe("peat-lane, in the city");
    expect(lessonOf("free180-peat-lane").place.skyMagPerArcsec2).toBe(18);
    expect(lessonOf("free-peat-lane").place).toEqual(SALLOWFELL_HILL);
    for (const sky of SITE_SKIES) expect(seedOfId(freeId("x".repeat(32), sky)!).sky).toBe(sky);
  });
});

describe("ids of lessons made from a word", () => {
  test("hold the word, and a title that grows no sky", () => {
    expect(seedTitle("daily-2026-11-25")).toBe("Sky of 25\u00a0Nov\u00a02026");
    expect(seedTitle("free-heath")).toBe("Free practice: heath");
    expect(lessonOf("free-heath")).toMatchObject({ id: "free-heath", sky: { practice: "heath" } });
    expect(lessonOf("free-heath")).toBe(lessonOf("free-heath"));
  });

  test.each([
    ["Peat Lane", "free-peat-lane"],
    ["  2026-11-25 ", "free-2026-11-25"],
    ["", null],
    ["ö", null],
    ["a--b", null],
    ["x".repeat(33), null],
  ])("%j typed is %s", (typed, id) => expect(freeId(typed)).toBe(id));

  test.each(["daily-2026-02-30", "daily-", "free-", "free-A", "free-a_b", "free185-heath", "free208-heath", "1-01"])(
    "%s is no lesson",
    (id) => {
      expect(seedLessonOf(id)).toBeNull();
    },
  );

  test("chance gives words that are seed words", () => {
    for (let i = 0; i < 16; i++) expect(freeId(drawSeedWord(() => i / 16))).not.toBeNull();
  });
});
