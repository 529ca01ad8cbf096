/**
 * The least light that an eye adapted to a background tells from it: points and discs after Crumey 2014 (MNRAS 442, 2600),
 * fitted to the measures of Blackwell 1946 (J. Opt. Soc. Am. 36, 624); stars also after Schaefer 1990 (PASP 102, 212).
 */
import { candelaOfMu, log10, magOfLux, nanolambertOfMu, power } from "./light.ts";

/** Below this the eye is as dark adapted as it gets, cd/m2 (Crumey 2014, sect. 1.5). */
export const DARKEST_CANDELA = 1e-5;
/** Between these eq. 34 dips by 0.03 mag; held at its lower end, so that a brighter sky never shows more. */
const DIP = { from: 0.02157, to: 0.065 } as const;
/** The measures end at 3.4e3 cd/m2. */
const BRIGHTEST_CANDELA = 3400;
/** Field factors: 1 is a laboratory's 50 %, these are observers' (Crumey 2014, sect. 1.6 and 3.1). */
export const FIELD_FACTOR = { novice: 2.4, typical: 2, keen: 1.4 } as const;

/** What the threshold is taken for: within the measures, and freed of the dip. */
function measured(candela: number): number {
  const held = Math.min(BRIGHTEST_CANDELA, Math.max(DARKEST_CANDELA, candela));
  return held > DIP.from && held < DIP.to ? DIP.from : held;
}

/** Fourth root of 1/B: the variable of both fits. */
const fourthRoot = (candela: number) => 1 / Math.sqrt(Math.sqrt(candela));

/** Ricco's area of a background, steradians: below it only the light counts, not its spread (Crumey 2014, eq. 25, 28). */
export function riccoSr(candela: number): number {
  const y = fourthRoot(candela);
  const root = Math.sqrt(5.949e-8 * y * y - 2.389e-7 * y + 2.459e-7) + 4.12e-4 * y - 4.225e-4;
  return root * root;
}

/** Least illuminance of a point before a background, lux, for a field factor of 1 (Crumey 2014, eq. 34). */
export function pointLux(candela: number): number {
  const held = measured(candela);
  return held * riccoSr(held);
}

/** Limiting magnitude of the naked eye under a sky (Crumey 2014, eq. 34 with 1.2). */
export const nakedLimitMag = (skyMu: number, fieldFactor: number): number =>
  magOfLux(fieldFactor * pointLux(candelaOfMu(skyMu)));

/** Least contrast of a large thing (Crumey 2014, eq. 39, 40). */
export function largeContrast(candela: number): number {
  const y = fourthRoot(candela);
  return Math.sqrt(9.606e-6 * y * y - 4.112e-5 * y + 5.019e-5) + 4.837e-3 * y - 4.884e-3;
}

/** How sharply the two laws pass into one another (Crumey 2014, eq. 42 to 44). */
function exponentOf(candela: number): number {
  if (candela < 0.193) return 0.6;
  return candela < 3.4 ? 0.8861 + 0.4 * log10(candela) : 1.146 - 0.0885 * log10(candela);
}

/**
 * Least contrast of a uniform disc before a background (Crumey 2014, eq. 41). Below the darkest background the luminance
 * that it must add stays what it is there.
 * @param areaSr apparent area, steradians
 */
export function discContrast(areaSr: number, candela: number, fieldFactor: number): number {
  const held = Math.max(DARKEST_CANDELA, candela);
  const q = exponentOf(held);
  const least = power(power(riccoSr(held) / areaSr, q) + power(largeContrast(held), q), 1 / q);
  return (fieldFactor * least * held) / candela;
}

/** Schaefer's two branches: rods in the dark, cones under more than this, log nanolambert (1990; Hecht's form). */
const CONES_FROM_LOG_NL = 3.17;
const SCHAEFER_ZERO = -16.57;

const hechtMag = (logC: number, logK: number, nanolambert: number) =>
  SCHAEFER_ZERO - 2.5 * logC - 5 * log10(1 + Math.sqrt(power(10, logK) * nanolambert));

/** Naked-eye limit of the rods alone (Schaefer 1990): for skies darker than 18.4. */
export const rodLimitMag = (skyMu: number): number => hechtMag(-9.8, -1.9, nanolambertOfMu(skyMu));
/** Naked-eye limit of the cones alone, by which a star stared at is seen (Schaefer 1990). */
export const coneLimitMag = (skyMu: number): number => hechtMag(-8.35, -5.9, nanolambertOfMu(skyMu));
/** Naked-eye limit after Schaefer 1990, without extinction and colour: the cross-check of the model in use. */
export const schaeferLimitMag = (skyMu: number): number =>
  log10(nanolambertOfMu(skyMu)) < CONES_FROM_LOG_NL ? rodLimitMag(skyMu) : coneLimitMag(skyMu);
