/** The tones of bright stars, a painter's table, against black bodies of the same B-V. */
import { describe, expect, it } from "vitest";
import { MOST_TONE, STAR_TONES } from "../../src/stage/starTones.ts";
import { blackBodyColour, type Colour, colourOfRgb, displayRgbOf, hueApartDeg, kelvinOf } from "./blackBody.ts";
import { drawnTone } from "./drawnTone.ts";

const BV = STAR_TONES.map(([colourBV]) => colourBV);
const toneAt = (colourBV: number, share: number): Colour => colourOfRgb(drawnTone(colourBV, share));
const drawn = (colourBV: number) => toneAt(colourBV, MOST_TONE);
/** From the bluest stop to the reddest. */
const ALONG = Array.from({ length: 43 }, (_, i) => (5 * i - 30) / 100);

describe("black bodies", () => {
  // Worked out apart from the project, by the same published fits; a unit of rounding.
  it.each([
    [-0.3, 177, 198, 255],
    [0, 204, 217, 255],
    [0.3, 235, 237, 255],
    [0.65, 255, 241, 234],
    [1, 255, 226, 198],
    [1.4, 255, 211, 163],
    [1.8, 255, 197, 133],
  ])("of B-V %f show as %i, %i, %i", (colourBV, ...rgb) => {
    displayRgbOf(kelvinOf(colourBV)).forEach((value, i) => {
      expect(Math.abs(value - rgb[i]!)).toBeLessThanOrEqual(1);
    });
  });
});

describe("the tones of stars", () => {
  it.each(BV)("at B-V %f are of a black body's hue", (colourBV) => {
    const body = blackBodyColour(colourBV);
    for (const share of [1, MOST_TONE]) {
      const tone = toneAt(colourBV, share);
      const apartDeg = hueApartDeg(tone, body);
      // Where a colour is plain, 8 degrees about white; near white, where a hair's breadth turns the hue, 21.
      expect(apartDeg, `share ${share}`).toBeLessThan(body.saturation > 0.015 ? 8 : 21);
      // Beside the way from white to the black body by two steps that an eye just tells (.002 to .004 in u'v', from memory).
      if (share < 1) expect(tone.saturation * Math.sin((apartDeg * Math.PI) / 180)).toBeLessThan(0.0045);
    }
  });

  it("are white where a black body is, between B-V .4 and .7, and bluer or redder the further from there", () => {
    for (const share of [1, MOST_TONE]) {
      const palest = ALONG.reduce((a, b) => (toneAt(a, share).saturation < toneAt(b, share).saturation ? a : b));
      const bodys = ALONG.reduce((a, b) => (blackBodyColour(a).saturation < blackBodyColour(b).saturation ? a : b));
      expect(Math.abs(palest - bodys)).toBeLessThanOrEqual(0.1);
      for (let i = 1; i < ALONG.length; i++) {
        const [before, now] = [toneAt(ALONG[i - 1]!, share).saturation, toneAt(ALONG[i]!, share).saturation];
        if (ALONG[i]! <= palest) expect(now, `B-V ${ALONG[i]}`).toBeLessThan(before);
        if (ALONG[i - 1]! >= palest) expect(now, `B-V ${ALONG[i]}`).toBeGreaterThan(before);
      }
    }
  });

  // Where the painter departs from physics. The tones themselves are a fifth to two thirds too rich on the warm side and for
  // the hottest; no star is drawn with more than .62 of its tone, as colours are pale to an eye that is used to the dark.
  it("are drawn with half to nine tenths of a black body's colour, and as much at B-V .7, where there is little", () => {
    const shares = BV.map((colourBV) => drawn(colourBV).saturation / blackBodyColour(colourBV).saturation);
    expect(shares.map((share) => Number(share.toFixed(2)))).toEqual([0.67, 0.54, 0.57, 1.03, 0.88, 0.71]);
    for (const colourBV of ALONG) {
      const over = drawn(colourBV).saturation - blackBodyColour(colourBV).saturation;
      expect(over, `B-V ${colourBV}`).toBeLessThan(0.004);
    }
  });

  it("run the way that stars do: the hotter, the bluer", () => {
    for (let i = 1; i < ALONG.length; i++) {
      const [before, now] = [drawn(ALONG[i - 1]!), drawn(ALONG[i]!)];
      expect(now.u, `B-V ${ALONG[i]}`).toBeGreaterThan(before.u);
    }
  });
});
