/**
 * Well-known objects in three instruments under three skies. Where no paper has it, what observers report is common
 * practice without a source: easy ones must be seen, hopeless ones must not, and edges are named.
 */
import { describe, expect, it, test } from "vitest";
import { exactPow10 } from "#core/celestial/exactMath.ts";
import { skyHere, zenithConditions } from "#core/eye/conditions.ts";
import { bandOf, bestPower, type Glass, objectMargin, withPower } from "#core/eye/margin.ts";
import { gearById } from "#core/optics/gear.ts";
import { catalogueObjects } from "#core/sky/objects.ts";

const objects = new Map(catalogueObjects().map((object) => [object.id, object]));
const objectOf = (id: string) => {
  const object = objects.get(id);
  if (!object) throw new Error(`no object ${id}`);
  return object;
};
const SKIES = { city: 18.5, village: 20.5, mountain: 21.8 } as const;
const at = (mu: number) => {
  const now = zenithConditions(mu);
  return { now, here: skyHere(now, [1, 0, 0]) };
};
const telescope = (apertureMm: number): Glass => ({
  kind: "eyepiece",
  apertureMm,
  magnification: apertureMm / 5,
  obstructionMm: 0.25 * apertureMm,
  transmission: 0.8,
  eyes: 1,
  fieldDeg: 60 / (apertureMm / 5),
});
const bestOf = (id: string, apertureMm: number, mu: number) => {
  const { now, here } = at(mu);
  return bestPower(objectOf(id), telescope(apertureMm), now, here).marginMag;
};
const finderMargin = (id: string, mu: number) => {
  const { now, here } = at(mu);
  return objectMargin(objectOf(id), gearById("finder-9x50"), now, here);
};

const ROWS =
  "M31 M42 M13 M57 M27 M81 M82 M1 M51 M33 M3 M5 M15 M92 M22 M4 M8 M17 M104 M64 M65 M66 M11 M35 M37 M44 M45 M97 M101 M74 M110 M32 NGC253 NGC2392 NGC5139 NGC6207".split(
    " ",
  );
const KNOWN = ROWS.filter((id) => objects.has(id));

test("at least thirty of the well-known are in the table", () => {
  expect(KNOWN.length).toBeGreaterThanOrEqual(30);
});

describe.each(KNOWN)("%s", (id) => {
  it("is seen the better the darker the sky and the larger the aperture", () => {
    const margins = [150, 300].map((mm) => Object.values(SKIES).map((mu) => bestOf(id, mm, mu)));
    const [small, large] = margins as [number[], number[]];
    for (const i of [0, 1, 2]) expect(large[i]).toBeGreaterThan(small[i]! - 0.05);
    for (const row of margins) expect([...row].sort((a, b) => a - b)).toEqual(row);
    expect(finderMargin(id, SKIES.mountain)).toBeGreaterThan(finderMargin(id, SKIES.city));
  });
});

describe("easy, hard and between", () => {
  const bands = (ids: string, margin: (id: string) => number) =>
    ids.split(" ").map((id) => `${id} ${bandOf(Math.round(1000 * margin(id)))}`);
  const all = (ids: string, band: string) => ids.split(" ").map((id) => `${id} ${band}`);

  it.each([
    ["M31 M13 M3 M5 M15 M92 M22 M44 M45 M35", SKIES.village],
    ["M31 M42 M13 M27 M3 M11 M44 M45 M81", SKIES.mountain],
  ])("a 50 mm finder shows %s under %s", (ids, mu) => {
    expect(bands(ids, (id) => finderMargin(id, mu))).toEqual(all(ids, "seen"));
  });

  it.each([
    ["M51 M82 M97 M101 M74 NGC6207", SKIES.city],
    ["M101 M74 M97 NGC6207", SKIES.village],
  ])("a 50 mm finder does not show %s under %s", (ids, mu) => {
    expect(bands(ids, (id) => finderMargin(id, mu))).toEqual(all(ids, "not"));
  });

  it.each([
    ["M57 M13 M27 M1 M51 M81 M82 M104 M32 NGC2392", 150, SKIES.village],
    ["M57 M13 M27 M1 M51 M81 M82 M104 M97 M65 M66", 300, SKIES.village],
    ["M57 M13 M27 M3 M32", 150, SKIES.city],
    ["M101 M74 M33 M97 M51", 300, SKIES.mountain],
  ])("%s are seen in %i mm under %s", (ids, mm, mu) => {
    expect(bands(ids, (id) => bestOf(id, mm, mu))).toEqual(all(ids, "seen"));
  });

  it("M 101 and M 74 are lost in town in 300 mm, and an edge in a village", () => {
    expect(bands("M101 M74", (id) => bestOf(id, 300, SKIES.city))).toEqual(all("M101 M74", "not"));
    expect(bands("M101 M74", (id) => bestOf(id, 300, SKIES.village))).toEqual(all("M101 M74", "edge"));
  });

  it("NGC 6207 in 300 mm in a village is an edge", () => {
    expect(bandOf(Math.round(1000 * bestOf("NGC6207", 300, SKIES.village)))).toBe("edge");
  });

  it("bright nebulae with a bright middle are a finder's: the Lagoon before the Trifid, the great southern ones to the naked eye too", () => {
    expect(finderMargin("M8", SKIES.village)).toBeGreaterThan(finderMargin("M20", SKIES.village) + 0.2);
    const { now, here } = at(SKIES.mountain);
    for (const id of ["M42", "NGC3372", "NGC2070"]) {
      expect(finderMargin(id, SKIES.village), id).toBeGreaterThan(0.7);
      expect(objectMargin(objectOf(id), gearById("eye"), now, here), id).toBeGreaterThan(0);
    }
  });

  it("the naked eye has M 31 under the mountain's sky, M 13 as an edge, and never M 51", () => {
    const { now, here } = at(SKIES.mountain);
    const eye = (id: string) => objectMargin(objectOf(id), gearById("eye"), now, here);
    expect(bands("M31 M13 M51", eye)).toEqual(["M31 seen", "M13 edge", "M51 not"]);
  });
});

describe("along the powers of a telescope", () => {
  const POWERS = Array.from({ length: 48 }, (_, i) => (200 / 7) * exactPow10(i * 0.02));

  it.each(KNOWN.filter((id) => objectOf(id).profile !== "members"))("%s grows to its best and fades from it", (id) => {
    for (const mu of Object.values(SKIES)) {
      const { now, here } = at(mu);
      // An eyepiece wide enough for all of it, so that only light and size count.
      const wide = { ...telescope(200), obstructionMm: 0, fieldDeg: 120 };
      const scan = POWERS.map((power) =>
        objectMargin(objectOf(id), withPower({ ...wide, magnification: power }, power), now, here),
      );
      for (const level of [-0.4, 0, 0.4, 0.5, 1.5]) {
        const changes = scan.filter((margin, i) => i > 0 && margin >= level !== scan[i - 1]! >= level).length;
        const inside = scan[0]! >= level || scan.at(-1)! >= level;
        expect(changes, `${id} ${mu} ${level}`).toBeLessThanOrEqual(inside ? 1 : 2);
      }
      const best = bestPower(objectOf(id), wide, now, here);
      expect(best.marginMag).toBeGreaterThanOrEqual(Math.max(...scan.slice(0, 47)) - 0.05);
    }
  });
});
