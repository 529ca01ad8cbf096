import { describe, expect, test } from "vitest";
import { dirFromRadec } from "#core/celestial/vector.ts";
import { conditionsAt, skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { costsOf } from "#core/eye/costs.ts";
import { eyeSeeing, seeingAt } from "#core/eye/eyeSeeing.ts";
import { bandOf, howSeen } from "#core/eye/margin.ts";
import { GEAR, gearById } from "#core/optics/gear.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import { practiceFacts } from "#core/sky/practice/practiceSky.ts";

const ANYWHERE: Dir = [1, 0, 0];
const HILL = { latDeg: 50, lonDeg: 0, heightM: 250, skyMagPerArcsec2: 20.8 };
const NIGHT = Date.parse("2027-08-31T21:00:00Z");
const under = (mu: number) => eyeSeeing(zenithConditions(mu), catalogueObjects());
const limitOf = (mu: number, gear: string) => under(mu).star(ANYWHERE, 0.7, gear).avertedMilliMag / 1000;

describe("the eye's seeing", () => {
  test("reaches as deep as observers say (common practice, no source)", () => {
    expect(limitOf(19.9, "finder-9x50")).toBeGreaterThan(9.4);
    expect(limitOf(20.3, "finder-9x50")).toBeLessThan(9.8);
    expect(limitOf(21.6, "eye")).toBeGreaterThan(6);
    expect(limitOf(22, "eye")).toBeLessThan(6.5);
  });

  test("gives whole numbers; a stare costs at most 1.5 mag and never reaches deeper", () => {
    for (const mu of [17, 19, 20.8, 22]) {
      for (const id of GEAR.keys()) {
        const { avertedMilliMag, directMilliMag } = under(mu).star(ANYWHERE, 0.7, id);
        expect(Number.isInteger(avertedMilliMag) && Number.isInteger(directMilliMag)).toBe(true);
        expect(directMilliMag).toBeLessThanOrEqual(avertedMilliMag);
        expect(avertedMilliMag - directMilliMag).toBeLessThanOrEqual(1500);
      }
    }
    expect(() => under(21).star(ANYWHERE, 0.7, "spyglass")).toThrow(InputError);
  });

  test("sees blue stars deeper than red ones, and high ones deeper than low ones", () => {
    const seeing = seeingAt(HILL, NIGHT, []);
    const high = dirFromRadec((300 * Math.PI) / 180, (40 * Math.PI) / 180);
    const low = dirFromRadec((270 * Math.PI) / 180, (-25 * Math.PI) / 180);
    const limit = (dir: Dir, bv: number) => seeing.star(dir, bv, "finder-9x50").avertedMilliMag;
    expect(limit(high, 0) - limit(high, 1.5)).toBe(405);
    expect(limit(high, 0.7)).toBeGreaterThan(limit(low, 0.7) + 400);
  });

  test("lets an aid set a limit for its instrument alone, a stare's with it", () => {
    const set = eyeSeeing(zenithConditions(18), [], { limitMag: { "finder-9x50": 8.25 } });
    const free = eyeSeeing(zenithConditions(18), []);
    const finder = set.star(ANYWHERE, 0.7, "finder-9x50");
    const unset = free.star(ANYWHERE, 0.7, "finder-9x50");
    expect(finder.avertedMilliMag).toBe(8250);
    expect(finder.avertedMilliMag - finder.directMilliMag).toBe(unset.avertedMilliMag - unset.directMilliMag);
    expect(set.star(ANYWHERE, 0.7, "eye")).toEqual(free.star(ANYWHERE, 0.7, "eye"));
  });

  test("calls a margin seen, edge or not, and says how", () => {
    expect([401, 400, 0, -400, -401].map((each) => bandOf(each))).toEqual(["seen", "edge", "edge", "edge", "not"]);
    expect([701, 700, -700, -701].map((each) => bandOf(each, "emissionNebula"))).toEqual([
      "seen",
      "edge",
      "edge",
      "not",
    ]);
    expect([-0.1, 0, 0.5, 1.5, 1.6].map(howSeen)).toEqual(["no", "averted", "held", "held", "direct"]);
    expect(under(21).object("no such thing", "finder-9x50").band).toBe("not");
  });

  test("never shows less with a deeper sky", () => {
    const [deep, bright] = [under(22), under(18)];
    for (const { id, kind } of catalogueObjects()) {
      if (kind === "darkNebula") continue;
      for (const gear of GEAR.keys()) {
        expect(deep.object(id, gear).marginMilliMag, `${id} ${gear}`).toBeGreaterThan(
          bright.object(id, gear).marginMilliMag,
        );
      }
    }
  });

  test.each([
    ["M57 M13 M27 M15 M11 M104 M1 M51", "newton200-48x", 20.8],
    ["M31 M33 NGC362", "newton150-30x", 20.8],
    ["M66 M65", "newton150-30x", 20.8],
    ["NGC188 NGC2392", "newton200-48x", 20.8],
    ["NGC869 NGC884 M44 M45 NGC4755", "binocular-10x50", 20.8],
    ["M81 M3", "catadioptric200-62x", 20.8],
    ["NGC5139 NGC5128 NGC253 NGC3132", "catadioptric200-62x", 21.5],
  ])("shows %s, targets of the course, in %s under %s", (ids, gear, mu) => {
    for (const id of ids.split(" ")) expect(under(mu).object(id, gear).band, id).toBe("seen");
  });

  test("has M 51 at the edge of the finder and well above it in the telescope, as the course counts on", () => {
    expect(under(20.8).object("M51", "finder-9x50").band).toBe("edge");
    expect(under(20.8).object("M51", "newton200-48x").marginMilliMag / 1000).toBeCloseTo(1.2, 0);
    expect(under(20.8).object("M31", "eye").band).not.toBe("not");
    expect(under(20.8).object("M51", "eye").band).toBe("not");
  });

  test("shows the practice cluster in binoculars and its galaxy in a telescope", () => {
    const { cluster, galaxy } = practiceFacts("sallow");
    const seeing = eyeSeeing(zenithConditions(20.8), [cluster, galaxy]);
    expect(seeing.object(cluster.id, "binocular-10x50").marginMilliMag).toBeGreaterThan(1500);
    expect(seeing.object(galaxy.id, "newton200-48x").band).toBe("seen");
    expect(seeing.object(galaxy.id, "eye").band).toBe("not");
  });
});

describe("what limits the view", () => {
  const place = dirFromRadec((300 * Math.PI) / 180, (20 * Math.PI) / 180);
  const finder = gearById("finder-9x50");
  const sum = (costs: object) => Object.values(costs).reduce((a: number, b: number) => a + b, 0);

  test("adds up to the way from the best view", () => {
    const now = conditionsAt(20.8, HILL, NIGHT);
    const worse = conditionsAt(19.8, HILL, NIGHT);
    const limit = (c: typeof now) => eyeSeeing(c, []).star(place, 0.7, finder.id).avertedMilliMag / 1000;
    expect(sum(costsOf(finder, worse, place)) - sum(costsOf(finder, now, place))).toBeCloseTo(
      limit(now) - limit(worse),
      2,
    );
    for (const cost of Object.values(costsOf(finder, now, place))) expect(cost).toBeGreaterThanOrEqual(0);
  });

  test("names the Moon when it shines, twilight at dusk, and neither in a dark night", () => {
    const dark = costsOf(finder, conditionsAt(21.5, HILL, NIGHT), place);
    expect([dark.moon, dark.twilight]).toEqual([0, 0]);
    const moonlit = costsOf(finder, conditionsAt(21.5, HILL, Date.parse("2027-08-17T22:00:00Z")), place);
    expect(moonlit.moon).toBeGreaterThan(0.8);
    const dusk = costsOf(finder, conditionsAt(21.5, HILL, Date.parse("2027-08-31T19:20:00Z")), place);
    expect(dusk.twilight).toBeGreaterThan(1);
  });

  test("a sky under Moon and Milky Way is never darker than without", () => {
    const now = conditionsAt(21.5, HILL, NIGHT);
    expect(skyHere({ ...now, glowMuAt: () => 21.5 }, place).skyMu).toBeLessThan(skyHere(now, place).skyMu - 0.4);
  });
});
