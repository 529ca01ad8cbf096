import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatDec, formatRa, parseAngleDeg, parseRaDeg } from "#core/celestial/angles.ts";
import { anAngle } from "./arbitrary.ts";

describe("reading", () => {
  it.each([
    ["283.4", 283.4],
    ["18h53m35s", 283.3958333],
    [" 18H 53m 35.4s ", 283.3975],
    ["18:53:35", 283.3958333],
    ["18:53", 283.25],
    ["6h", 90],
    ["6.5h", 97.5],
    ["283d24m", 283.4],
    ["0", 0],
  ])("right ascension %s", (text, deg) => {
    expect(parseRaDeg(text)).toBeCloseTo(deg, 6);
  });

  it.each([
    ["33.5", 33.5],
    ["-5", -5],
    ["\u22125.25", -5.25],
    ["+33d01m45s", 33.0291667],
    ["+33°01′45″", 33.0291667],
    ["-0°30'", -0.5],
    ["-00:30:00", -0.5],
    ["33:01:45", 33.0291667],
  ])("angle %s", (text, deg) => {
    expect(parseAngleDeg(text)).toBeCloseTo(deg, 6);
  });

  it.each([
    "",
    "x",
    "18h60m00s",
    "18:53:60",
    "24h00m01s",
    "360",
    "-1",
    "18h53",
    "1.5h30m",
    "18h 53.5m 2s",
    "1e3",
    "NaN",
  ])("no right ascension: %s", (text) => {
    expect(parseRaDeg(text)).toBeNull();
  });

  it.each(["", "+", "33d61m", "3h", "33d01m45", "--3", "33°01′45″ north"])("no angle: %s", (text) => {
    expect(parseAngleDeg(text)).toBeNull();
  });
});

describe("writing", () => {
  it.each([
    [283.3958333, "18h53m35s"],
    [359.9999, "00h00m00s"],
    [-15, "23h00m00s"],
  ])("right ascension %s", (deg, text) => {
    expect(formatRa(deg)).toBe(text);
  });

  it.each([
    [33.0291667, "+33°01′45″"],
    [-0.5, "\u221200°30′00″"],
    [-0.00001, "+00°00′00″"],
    [59.99999, "+60°00′00″"],
  ])("declination %s", (deg, text) => {
    expect(formatDec(deg)).toBe(text);
  });

  it("is read back to the rounding", () => {
    fc.assert(
      fc.property(anAngle(0, 359.99), anAngle(-90, 90), (raDeg, decDeg) => {
        expect(Math.abs(parseRaDeg(formatRa(raDeg))! - raDeg)).toBeLessThanOrEqual(0.5 / 240 + 1e-9);
        expect(Math.abs(parseAngleDeg(formatDec(decDeg))! - decDeg)).toBeLessThanOrEqual(0.5 / 3600 + 1e-9);
      }),
    );
  });
});
