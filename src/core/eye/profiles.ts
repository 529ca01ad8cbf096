/** How much of an object's light lies within a share of its listed size. */
import { exactExp } from "#core/celestial/exactMath.ts";
import type { ObjectProfile } from "#core/seams/index.ts";

/** Radius of the listed edge of a disc galaxy in scale lengths (the isophote of 25 mag/arcsec2; from memory). */
const DISC_EDGE = 3.2;
/** Half of the light of an old round galaxy lies within this share of its listed radius (convention). */
const BULGE_HALF = 0.35;
/** b of a Sersic profile of index 4 (Ciotti & Bertin 1999, A&A 352, 447). */
const SERSIC_B4 = 7.6692;
/** Half of a globular's light lies within this share of its listed radius (fitted to M 13, from memory). */
const GLOBULAR_HALF = 0.2;
/** Inner edge of a ring (convention). */
const RING_INNER = 0.6;

/** Light within radius r of a Sersic profile of index 4: the regularised gamma function P(8, z), in closed form. */
function sersic4(share: number): number {
  const z = SERSIC_B4 * Math.sqrt(Math.sqrt(share / BULGE_HALF));
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 8; k++) {
    term *= z / k;
    sum += term;
  }
  return 1 - exactExp(-z) * sum;
}

/**
 * Share of the whole light within `share` (0 to 1) of the listed half axes. The middle of a ring is dark and the eye looks at
 * its rim: a ring counts as a patch of the rim's own area and light.
 */
export function enclosedLight(profile: ObjectProfile, share: number): number {
  const square = share * share;
  switch (profile) {
    case "exponential":
    case "members":
      return 1 - (1 + DISC_EDGE * share) * exactExp(-DISC_EDGE * share);
    case "bulge":
      return sersic4(share);
    case "coma":
      // Dust that streams off evenly thins out as one over the distance (A'Hearn et al. 1984, AJ 89, 579).
      return share;
    case "plummer":
      return square / (square + GLOBULAR_HALF * GLOBULAR_HALF);
    case "ring":
      return Math.min(1, square / (1 - RING_INNER * RING_INNER));
    case "uniform":
      return square;
  }
}
