import { describe, expect, it } from "vitest";
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import { bodiesInView } from "#core/field/bodies.ts";
import { closeStars } from "#core/field/closeStars.ts";
import type { SeenObject } from "#core/field/seenField.ts";
import { gearById } from "#core/optics/gear.ts";
import { catalogueDoubles } from "#core/sky/doubles.ts";
import { solarSystemAt } from "#core/sky/solar/solarSystem.ts";

const seen = (...names: string[]): SeenObject[] =>
  names.map((name) => ({
    object: catalogueDoubles().find((one) => one.names.includes(name))!,
    marginMag: 9,
    band: "seen",
  }));
const pairsIn = (gear: string, blurArcsec = 2.5) =>
  closeStars(seen("Albireo", "Castor"), null, gearById(gear), blurArcsec).map(({ widthRad }) =>
    Math.round((widthRad / DEG) * 3600),
  );

describe("stars that stand apart to the eye", () => {
  it("are the pairs that this glass splits, each star no wider than their distance", () => {
    // 34" and 5": the finder parts the first alone, 48 times both (common practice, no source).
    expect(pairsIn("finder-9x50")).toEqual([31]);
    expect(pairsIn("newton200-48x")).toEqual([31, 5]);
    expect(pairsIn("eye")).toEqual([]);
  });
  it("do not stand apart in air that blurs them together", () => expect(pairsIn("newton200-48x", 12)).toEqual([31]));
  it("are Jupiter's moons beside its disc: smaller than the planet", () => {
    const system = solarSystemAt({ latDeg: 50, lonDeg: 0, heightM: 0 }, Date.UTC(2027, 1, 11, 22));
    const gear = gearById("newton400-200x");
    const view = bodiesInView(system, gear);
    const jupiter = system.bodies.find(({ name }) => name === "jupiter")!;
    const close = closeStars([], view, gear, 2.5);
    for (const moon of system.moons) {
      const place = dirFromMas(moon);
      const at = close.find(({ dir }) => Math.hypot(...dir.map((one, i) => one - place[i]!)) < 1e-6);
      expect((at!.widthRad / DEG) * 3_600_000, moon.name).toBeLessThan(jupiter.diameterMas / 2);
    }
  });
});
