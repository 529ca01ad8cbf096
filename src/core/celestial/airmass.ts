import { exactExp, exactLog, exactSin } from "./exactMath.ts";
import { DEG } from "./vector.ts";

/**
 * Air mass at an apparent altitude in degrees: 1 at the zenith, 38 at the horizon (F. Kasten & A. T. Young 1989, Appl.
 * Opt. 28, 4735, eq. 3). Altitudes outside 0 to 90 are taken at the nearer end.
 */
export function kastenYoung(apparentAltDeg: number): number {
  const h = Math.min(90, Math.max(0, apparentAltDeg));
  return 1 / (exactSin(h * DEG) + 0.50572 * exactExp(-1.6364 * exactLog(h + 6.07995)));
}
