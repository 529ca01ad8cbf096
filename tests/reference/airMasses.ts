/** Other formulas of air mass by apparent altitude, degrees, to hold the project's own against. */
import { DEG } from "#core/celestial/vector.ts";

/** K. A. Pickering 2002, DIO 12(1), 20. */
export const pickering = (altDeg: number): number => 1 / Math.sin((altDeg + 244 / (165 + 47 * altDeg ** 1.1)) * DEG);
/** G. V. Rozenberg 1966, Twilight, 159. */
export const rozenberg = (altDeg: number): number => {
  const sine = Math.sin(altDeg * DEG);
  return 1 / (sine + 0.025 * Math.exp(-11 * sine));
};
