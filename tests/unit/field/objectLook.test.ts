import { describe, expect, it } from "vitest";
import { isGlow } from "#core/field/glows.ts";
import { objectLook } from "#core/field/objectLook.ts";
import { catalogueObjects } from "#core/sky/objects.ts";

const objects = catalogueObjects();
const named = (name: string) => objects.find(({ names }) => names.includes(name))!;

describe("the look of an object", () => {
  it("is its kind's and its profile's", () => {
    const forms = ["M 57", "M 27", "M 13", "M 31", "M 87", "M 42", "M 1", "NGC 2237", "M 78"].map(
      (name) => objectLook(named(name), 1, 10).form,
    );
    expect(forms).toEqual(["ring", "plate", "granules", "disc", "bulge", "cloud", "cloud", "shell", "lamplit"]);
  });

  it("has a seed of its own: no two of a kind share one", () => {
    const kinds = new Map<string, number[]>();
    for (const object of objects.filter(({ kind }) => isGlow(kind)))
      kinds.set(object.kind, [...(kinds.get(object.kind) ?? []), objectLook(object, 1, 10).seed]);
    for (const [kind, seeds] of kinds) expect(new Set(seeds).size, kind).toBe(seeds.length);
  });

  // Giants of M 13 are of V 12 and fainter (from memory): a 50 mm finder shows a ball of mist, 200 mm hundreds of stars.
  it("breaks a globular cluster up once its giants are within reach", () => {
    const resolved = (limitMag: number) => objectLook(named("M 13"), 2, limitMag).resolved;
    expect(resolved(9.7)).toBe(0);
    expect(resolved(11.5)).toBe(0);
    expect(resolved(13)).toBeGreaterThan(0.2);
    expect(resolved(16)).toBe(1);
  });

  it("has its giants six magnitudes below the whole, and is out three and a half further down", () => {
    const { magV } = named("M 13");
    const resolved = (belowMag: number) => objectLook(named("M 13"), 2, magV + belowMag).resolved;
    expect(resolved(5.99)).toBe(0);
    expect(resolved(9.51)).toBe(1);
    expect(resolved(6.35)).toBeCloseTo(0.1, 9);
    expect(resolved(9.15)).toBeCloseTo(0.9, 9);
  });

  // How much brighter the heart is than the mean that the margin judges (fitted by eye, no source).
  it.each([
    ["M 31", 1.1],
    ["M 87", 1.3],
    ["M 13", 1],
    ["M 27", 0.2],
    ["M 57", 0.4],
    ["M 42", 0.9],
    ["NGC 2237", 0.4],
    ["M 78", 0.8],
  ])("the heart of %s is %f mag over what is judged", (name, overMag) => {
    for (const margin of [1, 2.5])
      expect(objectLook(named(name), margin, 10).cut).toBeCloseTo(Math.min(0.8, 10 ** (-0.4 * (margin + overMag))), 9);
    // However little of it is made out, its brightest fifth is.
    expect(objectLook(named(name), -3, 10).cut).toBeLessThanOrEqual(0.8);
    if (overMag < 0.22) expect(objectLook(named(name), -3, 10).cut).toBe(0.8);
  });

  it("shows more of it, the more it lies over what can be told", () => {
    const cuts = [-0.3, 0, 0.5, 1, 2, 4].map((margin) => objectLook(named("M 31"), margin, 10).cut);
    for (let i = 1; i < cuts.length; i++) expect(cuts[i]!).toBeLessThanOrEqual(cuts[i - 1]!);
    expect(cuts.at(-1)).toBeLessThan(0.02);
    expect(Math.max(...cuts)).toBeLessThan(1);
  });
});
