/** Star counts of a model of the galaxy: J. N. Bahcall & R. M. Soneira 1980, ApJS 44, 73, eq. B1, for |b| of 20 degrees and more. */
import { DEG } from "#core/celestial/vector.ts";

/** Stars to V per square degree at a galactic longitude and latitude, degrees. */
export function bahcallSoneira(mag: number, lonDeg: number, latDeg: number): number {
  const [sinB, cosB] = [Math.sin(latDeg * DEG), Math.cos(latDeg * DEG)];
  const along = cosB * Math.cos(lonDeg * DEG);
  // Between V 12 and 20 the disc's two terms run straight from one end to the other.
  const past = Math.min(20, Math.max(12, mag)) - 12;
  const [mu, gamma] = [0.03 + 0.0075 * past, 0.36 - 0.04 * past];
  const disc =
    (925 * 10 ** (0.035 * (mag - 15.75))) /
    (1 + 10 ** (-0.132 * (mag - 15.75))) ** 3 /
    (sinB * (1 - (mu * along) / sinB)) ** (3 - 5 * gamma);
  const halo =
    (1050 * 10 ** (0.087 * (mag - 17.5))) /
    (1 + 10 ** (-0.18 * (mag - 17.5))) ** 2.5 /
    (1 - along) ** (1.45 - 0.2 * along);
  return disc + halo;
}
