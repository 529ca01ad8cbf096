import { describe, expect, it } from "vitest";
import { InputError } from "#core/seams/errors.ts";
import type { SkyRef } from "#core/seams/index.ts";
import { checkSameSky } from "../../../src/desk/play/attempt.ts";

const practice = (skyVersion: number): SkyRef => ({ kind: "practice", seed: "sallow", skyVersion });
const CATALOGUE: SkyRef = { kind: "catalogue", skyVersion: 1 };

describe("a hop that was left", () => {
  it("is taken up under the practice sky that it began under, and under no other version of it", () => {
    expect(() => checkSameSky(practice(3), practice(3))).not.toThrow();
    expect(() => checkSameSky(practice(2), practice(3))).toThrow(InputError);
    expect(() => checkSameSky(practice(3), CATALOGUE)).toThrow(InputError);
  });
  it("is taken up under the catalogue's stars, whatever was mended in them", () => {
    expect(() => checkSameSky(CATALOGUE, { ...CATALOGUE, skyVersion: 2 })).not.toThrow();
  });
});
