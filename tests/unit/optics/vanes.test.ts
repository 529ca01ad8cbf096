import { describe, expect, it } from "vitest";
import { spikeBelowMag } from "#core/eye/spikes.ts";
import { GEAR } from "#core/optics/gear.ts";
import { hasVanes, spikeLight, spikeShare, VANE_RAD } from "#core/optics/vanes.ts";
import { fieldRadiusPlane } from "#core/optics/viewFrame.ts";

const ARCSEC = Math.PI / 648_000;

describe("spikes of a vane a millimetre thick", () => {
  it("fall to their first dark place at lambda over its thickness, 113 arcsec", () => {
    expect(VANE_RAD / ARCSEC).toBeCloseTo(113.4, 1);
    // sinc squared at a half, and where the mean over the fringes takes over.
    expect([spikeLight(0), spikeLight(1e-9)]).toEqual([1, 1]);
    expect(spikeLight(0.5)).toBeCloseTo(4 / Math.PI ** 2, 12);
    expect(spikeLight(0.7499) / spikeLight(0.7501)).toBeCloseTo(1, 2);
    expect(spikeLight(0.78)).toBeCloseTo(1 / (2 * (Math.PI * 0.78) ** 2), 12);
    for (let x = 0.05; x < 20; x += 0.05) expect(spikeLight(x)).toBeLessThan(spikeLight(x - 0.05));
  });

  it("hold what the strip scatters: the whole of its light lies under the curve", () => {
    let sum = 0;
    for (let x = 0.005; x < 400; x += 0.01) sum += 2 * spikeLight(x) * 0.01;
    expect(Math.abs(sum - 1)).toBeLessThan(0.03);
    // By Babinet's principle as much as the strip blocks: 1 x 200 mm of a disc 200 mm across.
    expect(spikeShare(200, VANE_RAD)).toBeCloseTo(200 / (Math.PI * 100 * 100), 12);
    expect(spikeShare(200, VANE_RAD / 10)).toBeCloseTo(spikeShare(200, VANE_RAD) / 10, 12);
  });

  it("agree with the diffraction integral of the strip, summed up apart", () => {
    // A strip 1 mm wide in light of 550 nm: amplitude over its width, squared.
    const intensity = (angleRad: number) => {
      let [re, im] = [0, 0];
      for (let i = 0; i < 2000; i++) {
        const phase = ((2 * Math.PI) / 550e-6) * ((i + 0.5) / 2000 - 0.5) * angleRad;
        re += Math.cos(phase) / 2000;
        im += Math.sin(phase) / 2000;
      }
      return re * re + im * im;
    };
    for (const arcsec of [10, 40, 70, 84]) {
      expect(spikeLight((arcsec * ARCSEC) / VANE_RAD)).toBeCloseTo(intensity(arcsec * ARCSEC), 5);
    }
  });

  it("are five to ten magnitudes fainter to the eye than their star, in every telescope that has them", () => {
    const withVanes = [...GEAR.values()].filter(hasVanes);
    expect(withVanes.length).toBeGreaterThan(3);
    for (const { apertureMm, magnification } of withVanes)
      for (const mu of [22, 23, 24.5]) {
        expect(spikeBelowMag(apertureMm, magnification, mu)).toBeGreaterThan(5);
        expect(spikeBelowMag(apertureMm, magnification, mu)).toBeLessThan(10);
      }
    // Summed over the width of Ricco's area, by the fit for the dark (Crumey 2014, eq. 53), 48 times narrower on the sky.
    const rootSr = 6.505e-4 * (10 ** (0.4 * (12.58 - 22))) ** -0.25 - 8.461e-4;
    const spanRad = (2 * rootSr) / Math.sqrt(Math.PI) / 48;
    expect(Math.abs(spikeBelowMag(200, 48, 22) + 2.5 * Math.log10(spikeShare(200, spanRad)))).toBeLessThan(0.03);
    // A brighter sky, a shorter reach of the eye's sum: fainter spikes.
    expect(spikeBelowMag(200, 48, 21)).toBeGreaterThan(spikeBelowMag(200, 48, 23));
  });

  it("are a Newtonian's alone", () => {
    for (const gear of GEAR.values()) expect(hasVanes(gear)).toBe(gear.id.startsWith("newton"));
  });
});

it("no instrument shows a star's diffraction ring: it lies within the eye's 2 arcmin, and within a third of a pixel", () => {
  for (const gear of GEAR.values()) {
    // First bright ring of a clear round aperture, 1.64 lambda / D (textbooks of optics).
    const ringRad = (1.64 * 550e-6) / gear.apertureMm;
    expect((ringRad * gear.magnification) / (60 * ARCSEC), gear.id).toBeLessThan(2);
    expect((372 * ringRad) / fieldRadiusPlane(gear), gear.id).toBeLessThan(1 / 3);
    expect(gear.apertureMm / gear.magnification, gear.id).toBeGreaterThanOrEqual(2);
  }
});
