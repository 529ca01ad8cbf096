/** The tone that a star of a B-V is drawn in: the project's table, read here apart from the shader that is made of it. */
import { STAR_TONES } from "../../src/stage/starTones.ts";

type Rgb = readonly [number, number, number];

/**
 * Display values, 0 to 1.
 * @param share of the tone that the star takes on; the rest is white
 */
export function drawnTone(colourBV: number, share: number): Rgb {
  const first = STAR_TONES[0]!;
  const above = STAR_TONES.findIndex(([stop]) => stop >= colourBV);
  const [low, high] =
    above < 0 ? [STAR_TONES.at(-1)!, STAR_TONES.at(-1)!] : [STAR_TONES[above - 1] ?? first, STAR_TONES[above]!];
  const way = high === low ? 0 : (colourBV - low[0]) / (high[0] - low[0]);
  const channel = (i: 1 | 2 | 3) => 1 - share * (1 - (low[i] + way * (high[i] - low[i])) / 255);
  return [channel(1), channel(2), channel(3)];
}
