import { describe, expect, it } from "vitest";
import { checkGear, fieldDas, GEAR, gearById, HAND_RULER, SIGHT_RINGS_DEG } from "#core/optics/gear.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import { DataFileError, InputError } from "#core/seams/errors.ts";

describe("gear", () => {
  it("has the instruments that lessons name", () => {
    const ids = ["eye", "sight", "binocular-10x50", "finder-9x50", "finder-9x50-mirror", "finder-9x50-erecting"];
    const more = ["finder-9x50-upright", "finder-6x30", "newton200-48x", "newton200-100x", "newton150-30x"];
    const most = ["catadioptric200-62x", "refractor80-20x", "newton300-62x", "newton300-150x"];
    for (const id of [...ids, ...more, ...most]) expect(GEAR.has(id), id).toBe(true);
    expect([...GEAR.keys()][0]).toBe("eye");
  });

  it("lets out no wider beam than the eye takes in the dark", () => {
    for (const gear of GEAR.values()) {
      expect(gear.apertureMm / gear.magnification, gear.id).toBeLessThanOrEqual(6);
    }
  });

  it("measures the sky by hand and by the sight's rings", () => {
    expect(HAND_RULER).toEqual({ fistDeg: 10, threeFingersDeg: 5, littleFingerDeg: 1 });
    expect(SIGHT_RINGS_DEG).toEqual([1, 3]);
  });

  it("gives fields as whole tenths of an arcsecond and as a radius on the plane", () => {
    expect(fieldDas(gearById("finder-9x50"))).toBe(190_800);
    expect(projectionOf(gearById("sight"))).toBe("stereographic");
    expect(projectionOf(gearById("finder-9x50"))).toBe("gnomonic");
    expect(fieldRadiusPlane(gearById("finder-9x50"))).toBeCloseTo(Math.tan((2.65 * Math.PI) / 180), 14);
    expect(fieldRadiusPlane(gearById("eye"))).toBeCloseTo(2 * Math.tan(Math.PI / 8), 14);
  });

  it("names what is unknown or broken", () => {
    expect(() => gearById("no-such-glass")).toThrow(InputError);
    const good = gearById("eye");
    expect(checkGear({ ...good })).toEqual(good);
    const broken: readonly [string, unknown][] = [
      ["id", "Eye!"],
      ["kind", "nose"],
      ["path", "bent"],
      ["apertureMm", 0],
      ["magnification", "9"],
      ["fieldDeg", Number.NaN],
      ["clockDeg", 270],
      ["obstructionMm", 0.52 * good.apertureMm],
      ["transmission", 1.2],
      ["eyes", 3],
    ];
    for (const [key, value] of broken) {
      expect(() => checkGear({ ...good, [key]: value }), key).toThrow(DataFileError);
      expect(() => checkGear({ ...good, [key]: value }), key).toThrow(key);
    }
  });
});
