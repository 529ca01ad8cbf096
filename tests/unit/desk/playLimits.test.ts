import { describe, expect, it } from "vitest";
import { dirFromRadec } from "#core/celestial/vector.ts";
import { nightAt } from "#core/eye/nightSky.ts";
import { limitShares, limitWords, skyShade } from "../../../src/desk/play/limits.ts";

const DEG = Math.PI / 180;
const PLACE = { latDeg: 50, lonDeg: 0, heightM: 250, skyMagPerArcsec2: 20.8 };
/** New Moon 2027-10-29, full Moon 2027-10-15 (handbooks, from memory). */
const DARK_MS = Date.UTC(2027, 9, 29, 20);
const MOONLIT_MS = Date.UTC(2027, 9, 15, 22);
const POLE = dirFromRadec(0, 89 * DEG);

describe("what limits the view", () => {
  it("is told in the order of the light's way, the greatest first in the sentence", () => {
    const shares = limitShares({ skyGlow: 0.42, moon: 0.01, twilight: 0, altitude: 0.11, optics: 0.9, eye: 0.2 });
    expect(shares.map(({ cause }) => cause)).toEqual(["skyGlow", "altitude", "optics", "eye"]);
    expect(limitWords(shares)).toBe("Most is lost to the glass, then the glow of the sky");
    expect(limitWords([])).toBe("Nothing limits the view");
  });

  it("names the Moon under a full one and not under a new one; a city loses more to its sky than a mountain", () => {
    const moon = (atMs: number) => nightAt(PLACE, atMs, []).costs(POLE, "eye").moon;
    expect(moon(MOONLIT_MS)).toBeGreaterThan(0.4);
    expect(moon(DARK_MS)).toBe(0);
    const glow = (mu: number) => nightAt({ ...PLACE, skyMagPerArcsec2: mu }, DARK_MS, []).costs(POLE, "eye").skyGlow;
    expect(glow(18)).toBeGreaterThan(glow(20.8) + 1);
    expect(glow(20.8)).toBeGreaterThan(glow(21.9) + 0.3);
  });

  it("the field of a wide exit pupil is brighter than that of a narrow one, and moonlight brightens both", () => {
    const shade = (gear: string, atMs = DARK_MS) => skyShade(nightAt(PLACE, atMs, []).atTheEyeMu(POLE, gear));
    const [finder, eyepiece] = [shade("finder-9x50"), shade("newton300-150x")];
    expect(finder).toBeGreaterThan(eyepiece);
    expect(shade("finder-9x50", MOONLIT_MS)).toBeGreaterThan(1.15 * finder);
    expect(finder).toBeGreaterThan(0.9);
    expect(finder).toBeLessThan(1.1);
  });
});
