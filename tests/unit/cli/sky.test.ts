/** Numbers of the verbs, held against figures that were made elsewhere. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { faintward, jsonOf, repo } from "./faintward.ts";

const RAD = Math.PI / 180;
const read = <Data>(name: string) => JSON.parse(readFileSync(repo(`tests/reference/data/${name}`), "utf8")) as Data;
type Star = { raDeg: number; decDeg: number; magV: number; colourBV: number | null; invented: boolean };
type Stars = { sky: string; epoch: number; complete: boolean; stars: Star[] };

/** Standard coordinates of the tangent plane, east and north, radians (textbook formula, not the program's). */
function standard(raDeg: number, decDeg: number, ra0Deg: number, dec0Deg: number): { east: number; north: number } {
  const [d, d0, a] = [decDeg * RAD, dec0Deg * RAD, (raDeg - ra0Deg) * RAD];
  const below = Math.sin(d) * Math.sin(d0) + Math.cos(d) * Math.cos(d0) * Math.cos(a);
  return {
    east: (Math.cos(d) * Math.sin(a)) / below,
    north: (Math.sin(d) * Math.cos(d0) - Math.cos(d) * Math.sin(d0) * Math.cos(a)) / below,
  };
}

describe("stars", () => {
  type Cone = { raDeg: number; decDeg: number; radiusDeg: number; limitMag: number; stars: [number, number, number][] };
  const { cones } = read<{ cones: Cone[] }>("cones.json");

  it.each(cones.slice(0, 4))(
    "the raw catalogue about $raDeg $decDeg, and nothing else",
    ({ raDeg, decDeg, radiusDeg, limitMag, stars }) => {
      const answer = jsonOf<Stars>(
        "stars",
        `--ra=${raDeg}`,
        `--dec=${decDeg}`,
        `--radius=${radiusDeg}`,
        `--limit=${limitMag}`,
      );
      expect(answer).toMatchObject({ sky: "catalogue", epoch: 2025, complete: true });
      const apart = (a: { raDeg: number; decDeg: number }, b: [number, number, number]) => {
        const { east, north } = standard(b[0], b[1], a.raDeg, a.decDeg);
        return (Math.hypot(east, north) / RAD) * 3600;
      };
      const inside = ([ra, dec, mag]: [number, number, number]) => {
        const { east, north } = standard(ra, dec, raDeg, decDeg);
        return Math.atan(Math.hypot(east, north)) / RAD < radiusDeg - 1 / 3600 && mag < limitMag - 0.02;
      };
      for (const star of stars.filter(inside))
        expect(answer.stars.some((each) => apart(each, star) < 1 && Math.abs(each.magV - star[2]) < 0.02)).toBe(true);
      for (const each of answer.stars) expect(stars.some((star) => apart(each, star) < 1)).toBe(true);
    },
  );

  it("come brightest first, none twice", () => {
    const { stars } = jsonOf<Stars>("stars", "--ra=83.8", "--dec=-5.4", "--radius=10", "--limit=6.5");
    expect(stars.length).toBeGreaterThan(100);
    expect(stars.map(({ magV }) => magV)).toEqual(stars.map(({ magV }) => magV).sort((a, b) => a - b));
    expect(new Set(stars.map(({ raDeg, decDeg }) => `${raDeg} ${decDeg}`)).size).toBe(stars.length);
  });

  it("tell where the catalogue ends", () => {
    expect(jsonOf<Stars>("stars", "--ra=0", "--dec=0", "--radius=0.5", "--limit=13").complete).toBe(false);
  });

  it("of a practice sky are the same each time", () => {
    const args = ["stars", "--ra=0", "--dec=70", "--radius=3", "--limit=9", "--sky=sallow", "--json"];
    const [first, second] = [faintward(...args), faintward(...args)];
    expect(JSON.parse(first.out)).toMatchObject({ sky: "sallow", complete: true });
    expect((JSON.parse(first.out) as Stars).stars.length).toBeGreaterThan(20);
    expect(second.out).toBe(first.out);
  });
});

describe("place", () => {
  type Row = {
    tag: string;
    ra: number;
    dec: number;
    utc: string;
    lat: number;
    lon: number;
    alt: number;
    az: number;
    ha_true: number;
    parallactic_icrs: number;
  };
  type Placed = {
    raDeg: number;
    decDeg: number;
    altitudeDeg: number;
    azimuthDeg: number;
    airmass: number | null;
    parallacticDeg: number;
    hourAngleDeg: number;
    constellation: string;
    refractionDeg: number;
  };
  const rows = read<{ cases: Row[] }>("horizontal.json").cases.filter(
    ({ alt, lat, dec }) => alt > 0 && alt < 85 && Math.abs(lat) < 85 && Math.abs(dec) < 85,
  );
  const every = rows.filter((_, i) => i % Math.ceil(rows.length / 12) === 0);

  it.each(every)(
    "ERFA: $ra $dec from $lat $lon at $utc",
    ({ ra, dec, utc, lat, lon, alt, az, ha_true, parallactic_icrs }) => {
      const placed = jsonOf<Placed>("place", `--ra=${ra}`, `--dec=${dec}`, `--site=${lat},${lon}`, `--time=${utc}`);
      const turn = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);
      expect(Math.abs(placed.altitudeDeg - alt) * 3600).toBeLessThan(2);
      expect(turn(placed.azimuthDeg, az) * Math.cos(alt * RAD) * 3600).toBeLessThan(2);
      expect(turn(placed.hourAngleDeg, ha_true) * Math.cos(dec * RAD) * 3600).toBeLessThan(2);
      expect(turn(placed.parallacticDeg, parallactic_icrs)).toBeLessThan(
        0.01 / Math.min(Math.cos(alt * RAD), Math.cos(dec * RAD)),
      );
      // Saemundsson 1986 and Kasten & Young 1989, written out.
      const refraction = 1.02 / 60 / Math.tan((alt + 10.3 / (alt + 5.11)) * RAD);
      expect(placed.refractionDeg).toBeCloseTo(refraction, 5);
      const seen = alt + refraction;
      expect(placed.airmass!).toBeCloseTo(1 / (Math.sin(seen * RAD) + 0.50572 * (seen + 6.07995) ** -1.6364), 3);
    },
  );

  it("finds a thing by name and names its constellation", () => {
    const placed = jsonOf<Placed>("place", "M 27", "--site=50,0,250", "--time=2027-08-31T21:00:00Z");
    expect(placed.constellation).toBe("Vulpecula");
    expect(placed.altitudeDeg).toBeCloseTo(62.5, 1);
  });

  it("below the horizon there is no air mass", () => {
    const placed = jsonOf<Placed>("place", "--ra=0", "--dec=-80", "--site=50,0", "--time=2027-08-31T21:00:00Z");
    expect(placed.altitudeDeg).toBeLessThan(-5);
    expect(placed.airmass).toBeNull();
  });
});

describe("view", () => {
  type View = {
    fieldDeg: number;
    orientation: { parity: 1 | -1; rotationRad: number };
    stars: { raDeg: number; decDeg: number; magV: number; xRad: number; yRad: number }[];
  };
  const CENTRE = ["--ra=299.69", "--dec=19.49"];
  const OPEN = ["--aperture=50", "--magnification=9", "--field=5.3", "--limit=8"];
  const view = (...args: string[]) => jsonOf<View>("view", ...CENTRE, ...args);
  /** East is left in a correct image with north up. */
  const expected = (
    { raDeg, decDeg }: { raDeg: number; decDeg: number },
    parity: 1 | -1,
    clockwiseDeg: number,
  ): [number, number] => {
    const { east, north } = standard(raDeg, decDeg, 299.69, 19.49);
    const [c, s, x] = [Math.cos(clockwiseDeg * RAD), Math.sin(clockwiseDeg * RAD), parity * -east];
    return [x * c + north * s, north * c - x * s];
  };

  it.each<[string, string[], 1 | -1, number]>([
    ["correct", ["--image=correct"], 1, 0],
    ["inverted", ["--image=inverted"], 1, 180],
    ["mirrored", ["--image=mirrored"], -1, 0],
    ["correct, turned clockwise", ["--image=correct", "--turn=30"], 1, 30],
    ["inverted, turned the other way", ["--image=inverted", "--turn=-50"], 1, 130],
    ["mirrored, then turned", ["--image=mirrored", "--turn=20"], -1, 20],
  ])("%s: every star where the textbook puts it", (_, args, parity, clockwiseDeg) => {
    const { stars, orientation, fieldDeg } = view(...OPEN, ...args);
    expect(fieldDeg).toBe(5.3);
    expect(orientation.parity).toBe(parity);
    expect(orientation.rotationRad).toBeCloseTo(clockwiseDeg * RAD, 8);
    expect(stars.length).toBeGreaterThan(20);
    for (const star of stars) {
      const [x, y] = expected(star, parity, clockwiseDeg);
      expect(Math.hypot(star.xRad - x, star.yRad - y)).toBeLessThan(1e-7);
      expect(Math.hypot(star.xRad, star.yRad)).toBeLessThanOrEqual(Math.tan(2.65 * RAD) + 1e-9);
    }
  });

  it("with an observer the zenith is up", () => {
    const observer = ["--site=50,0,250", "--time=2027-08-31T21:00:00Z"];
    const { parallacticDeg } = jsonOf<{ parallacticDeg: number }>("place", ...CENTRE, ...observer);
    const { stars } = view(...OPEN, ...observer);
    for (const star of stars) {
      // The zenith stands at the parallactic angle, counter-clockwise from north: turn it clockwise to the top.
      const [x, y] = expected(star, 1, parallacticDeg);
      expect(Math.hypot(star.xRad - x, star.yRad - y)).toBeLessThan(1e-7);
    }
  });

  it.each([
    ["finder-9x50", { parity: 1, rotationRad: Math.PI }],
    ["finder-9x50-upright", { parity: 1, rotationRad: 0 }],
    ["finder-9x50-mirror", { parity: -1, rotationRad: 0 }],
    ["finder-9x50-erecting", { parity: 1, rotationRad: 0 }],
  ])("%s shows the image of its kind", (gear, orientation) => {
    expect(view(`--gear=${gear}`, "--limit=5").orientation).toEqual(orientation);
  });

  it("a telescope with its eyepiece at the side turns the image with altitude", () => {
    const turnAt = (time: string) =>
      view("--gear=newton200-48x", "--limit=7", "--site=50,0", `--time=${time}`).orientation.rotationRad;
    expect(turnAt("2027-08-31T21:00:00Z")).not.toBeCloseTo(turnAt("2027-09-01T01:00:00Z"), 1);
  });

  it("north is up at the pole too, along the meridian that was asked for", () => {
    const { stars } = jsonOf<View>("view", "--ra=0", "--dec=90", ...OPEN);
    expect(stars.length).toBeGreaterThan(5);
    for (const { raDeg, decDeg, xRad, yRad } of stars) {
      const r = 1 / Math.tan(decDeg * RAD);
      expect(Math.hypot(xRad + r * Math.sin(raDeg * RAD), yRad + r * Math.cos(raDeg * RAD))).toBeLessThan(1e-7);
    }
  });
});
