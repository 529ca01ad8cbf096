/** Colours of an open sky by the Sun's depth; set by eye after the dusk of the pictures, no source. */
import type { FieldHorizon, Rgb } from "./view.ts";

export interface Twilight {
  /** High up, the light added at the horizon all round, the warm light added about the Sun's place. */
  readonly high: Float32Array;
  readonly pale: Float32Array;
  readonly warm: Float32Array;
  readonly near: Float32Array;
  readonly far: Float32Array;
  /** Height by which the pale light falls to 1/e, and angle by which the warm light does; radians. */
  paleRad: number;
  warmRad: number;
}
const vec = () => new Float32Array(3);
export const createTwilight = (): Twilight => ({
  high: vec(),
  pale: vec(),
  warm: vec(),
  near: vec(),
  far: vec(),
  paleRad: 0,
  warmRad: 0,
});

const DEG = Math.PI / 180;
/** Night's own pale rim: the lights of the valley, not the Sun. */
const NIGHT_PALE: Rgb = [0.036, 0.044, 0.047];
const DUSK_PALE: Rgb = [0.3, 0.325, 0.3];
const DUSK_WARM: Rgb = [0.5, 0.24, 0.03];
const DUSK_HIGH: Rgb = [0.01, 0.05, 0.11];
const NEAR: Rgb = [10 / 255, 12 / 255, 13 / 255];
/** Hills stand in front with this share of the light behind them added. */
const HAZE = 0.28;

/**
 * @param out - written in place
 * @param skyRgb - the sky high up without twilight
 */
export const twilightOf = (out: Twilight, skyRgb: Rgb, horizon: FieldHorizon): void => {
  const depthDeg = -horizon.sunAltitudeRad / DEG;
  const dusk = Math.min(1, Math.max(0, (18 - depthDeg) / 12));
  // The pale band comes first, the blue overhead late.
  const early = Math.sqrt(dusk);
  const late = dusk * dusk;
  for (let c = 0; c < 3; c++) {
    out.high[c] = skyRgb[c]! + DUSK_HIGH[c]! * late;
    out.pale[c] = NIGHT_PALE[c]! + DUSK_PALE[c]! * (0.6 * early + 1.2 * late);
    out.warm[c] = DUSK_WARM[c]! * (0.45 * early + 0.75 * late);
    out.near[c] = NEAR[c]!;
    out.far[c] = NEAR[c]! + HAZE * (out.high[c]! + 0.8 * out.pale[c]!);
  }
  out.paleRad = (10 + 6 * early) * DEG;
  out.warmRad = (21 + 6 * early) * DEG;
};
