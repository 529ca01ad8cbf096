/** The screen as an instrument: what light it gives for a code value, which stars it can show, how large things are on it. */
const DEG = Math.PI / 180;

/** Display value of a star at the limit, 0 .. 1, and by how many powers of ten it grows with each magnitude (drawing rule). */
export const LIMIT_PEAK = 0.27;
export const PEAK_DEX_PER_MAG = 0.248;

/** Light of a display value, both 0 .. 1: the sRGB transfer (IEC 61966-2-1). */
export const lightOfValue = (value: number): number =>
  value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
/** Display value of a light, both 0 .. 1: the same the other way. */
export const valueOfLight = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;

/** Share of white's luminance that red and green have (IEC 61966-2-1). */
const LUMINANCE = { red: 0.2126, green: 0.7152 } as const;
export type ScreenLamp = "normal" | "red" | "amber";
/** Share of a lamp's red channel that its green one has, by display value. */
export const greenShare = (lamp: ScreenLamp): number => (lamp === "amber" ? 0.5 : 0);

/** Luminance of a lamp's colour, white is 1. @param value display value of its greatest channel, 0 .. 1 */
export function luminanceOf(lamp: ScreenLamp, value: number): number {
  if (lamp === "normal") return lightOfValue(value);
  return LUMINANCE.red * lightOfValue(value) + LUMINANCE.green * lightOfValue(greenShare(lamp) * value);
}

const HALVINGS = 40;
/**
 * The least display value, 0 .. 1, with which a lamp's colour has a luminance; 1 where it has it with none. Found by halving:
 * amber's luminance has no closed inverse.
 */
export function valueOfLuminance(lamp: ScreenLamp, luminance: number): number {
  if (lamp === "normal") return Math.min(1, valueOfLight(luminance));
  let [low, high] = [0, 1];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (luminanceOf(lamp, middle) < luminance) low = middle;
    else high = middle;
  }
  return high;
}

/** Flatter than this the faintest stars would be as bright as the middling ones, and a field no more itself (drawing rule). */
const LEAST_LIFT = 0.5;
export interface ScreenReach {
  /** Exponent of a star's display value against the lamp's greatest: 1 leaves all as it is, less lifts the faint ones. */
  readonly lift: number;
  /** So many magnitudes over the limit a star is still hidden. */
  readonly hiddenMag: number;
  /** What a star at the limit has at least, display value against the lamp's greatest; 0 where it is hidden all the same. */
  readonly least: number;
}
/**
 * What of the stars a screen shows. A star at the limit is lifted to the least that shows, the brightest stay, all keep their
 * order; where it would take an exponent under 0.5, the faintest stay hidden.
 * @param leastLuminance what shows on this screen, white is 1
 * @param greatest display value of the lamp's greatest channel, 0 .. 1
 */
export function screenReach(leastLuminance: number, lamp: ScreenLamp, greatest: number): ScreenReach {
  const share = Math.min(1, valueOfLuminance(lamp, leastLuminance) / greatest);
  if (share <= LIMIT_PEAK) return { lift: 1, hiddenMag: 0, least: share };
  const wanted = Math.log(share) / Math.log(LIMIT_PEAK);
  if (wanted >= LEAST_LIFT) return { lift: wanted, hiddenMag: 0, least: share };
  const unlifted = Math.log10(share) / LEAST_LIFT;
  return { lift: LEAST_LIFT, hiddenMag: (unlifted - Math.log10(LIMIT_PEAK)) / PEAK_DEX_PER_MAG, least: 0 };
}

/** A bank card, mm (ISO/IEC 7810, ID-1). */
export const CARD_MM = { width: 85.6, height: 53.98 } as const;

/** CSS px per mm of a screen on which a card is so wide. */
export const pxPerMmOf = (cardWidthPx: number): number => cardWidthPx / CARD_MM.width;

/** How large a length in the middle of the screen looks, degrees. */
export const spanDeg = (lengthPx: number, pxPerMm: number, distanceMm: number): number =>
  (2 * Math.atan(lengthPx / pxPerMm / 2 / distanceMm)) / DEG;
/** How long on the screen is what looks so large, CSS px. */
export const spanPx = (deg: number, pxPerMm: number, distanceMm: number): number =>
  2 * Math.tan((deg * DEG) / 2) * distanceMm * pxPerMm;
