import { describe, expect, it } from "vitest";
import { parseArgs } from "../../../src/cli/args.ts";
import { UsageError } from "../../../src/cli/usageError.ts";
import { decDegOf, numberOf, raDegOf, roundedTurn, siteOf, utcMsOf } from "../../../src/cli/values.ts";

const OPTIONS = { dec: "value", eyes: "flag" } as const;
const parse = (...args: string[]) => parseArgs(args, OPTIONS, { least: 0, most: 1, what: "a name" });

describe("arguments", () => {
  it.each([
    [["--dec=-12.5"], { dec: "-12.5" }],
    [["--dec", "12.5"], { dec: "12.5" }],
    [["--dec==5"], { dec: "=5" }],
    [["--eyes", "--json"], { eyes: true, json: true }],
  ])("%j", (args, options) => {
    expect(parse(...args).options).toEqual(options);
  });

  it("keeps words apart from options", () => {
    expect(parse("M 27", "--eyes")).toEqual({ options: { eyes: true }, words: ["M 27"] });
  });

  it.each([
    [["--dec", "-12.5"], /--dec has no value; write --dec=-12\.5/],
    [["--dec", "--eyes"], /--dec has no value; write --dec=VALUE/],
    [["--dec"], /has no value/],
    [["--dec="], /has no value/],
    [["--dce=1"], /unknown option --dce; did you mean --dec\?/],
    [["--ra=1"], /unknown option --ra; known: --json, --dec, --eyes/],
    [["--eyes=2"], /takes no value/],
    [["--dec=1", "--dec=2"], /given twice/],
    [["-d"], /two hyphens/],
    [["a", "b"], /"b" is one word too many/],
    [["--toString=1"], /unknown option --toString/],
    [["--__proto__=1"], /unknown option --__proto__/],
  ])("%j is refused", (args, says) => {
    const attempt = () => parse(...args);
    expect(attempt).toThrow(UsageError);
    try {
      attempt();
    } catch (error) {
      expect(`${(error as UsageError).message}; ${(error as UsageError).hint}`).toMatch(says);
    }
  });

  it("says what is missing", () => {
    expect(() => parseArgs([], {}, { least: 1, most: 1, what: "a record" })).toThrow("a record is missing");
  });
});

describe("values", () => {
  it("goes on at 0 where a turn is whole, also by rounding", () => {
    expect([359.9999994, 359.9999996, 0, 180].map((deg) => roundedTurn(deg, 6))).toEqual([359.999999, 0, 0, 180]);
  });
  it("takes angles in every writing", () => {
    expect(raDegOf("18h53m35s")).toBeCloseTo(283.395833, 6);
    expect(raDegOf("18:53:35")).toBeCloseTo(283.395833, 6);
    expect(decDegOf("+33d01m45s")).toBeCloseTo(33.029167, 6);
    expect(decDegOf("-0.5")).toBe(-0.5);
  });
  it("takes sites with and without height", () => {
    expect(siteOf("50,0,250")).toEqual({ latDeg: 50, lonDeg: 0, heightM: 250 });
    expect(siteOf("-33.5,18")).toEqual({ latDeg: -33.5, lonDeg: 18, heightM: 0 });
  });
  it("takes UTC to parts of a second", () => {
    expect(utcMsOf("2027-08-31T21:00:00Z")).toBe(Date.UTC(2027, 7, 31, 21));
    expect(utcMsOf("2027-08-31T21:00Z")).toBe(Date.UTC(2027, 7, 31, 21));
    expect(utcMsOf("2028-02-29T00:00:00.5Z")).toBe(Date.UTC(2028, 1, 29, 0, 0, 0, 500));
  });
  it.each([
    [() => raDegOf("360")],
    [() => raDegOf("-1")],
    [() => raDegOf("1h70m")],
    [() => decDegOf("90.1")],
    [() => decDegOf("north")],
    [() => numberOf("limit", "1e3", -2, 20, "magnitudes")],
    [() => numberOf("limit", "", -2, 20, "magnitudes")],
    [() => numberOf("limit", "21", -2, 20, "magnitudes")],
    [() => siteOf("50")],
    [() => siteOf("91,0")],
    [() => siteOf("50,0,high")],
    [() => siteOf("50,0,1,2")],
    [() => utcMsOf("2027-02-29T00:00:00Z")],
    [() => utcMsOf("2027-08-31T21:00:00")],
    [() => utcMsOf("2027-08-31T21:00:00+02:00")],
    [() => utcMsOf("2027-08-31 21:00")],
    [() => utcMsOf("1800-01-01T00:00:00Z")],
  ])("%s is refused", (attempt) => {
    expect(attempt).toThrow(UsageError);
  });
});
