/** Skies of sites, moonless at the zenith, mag/arcsec2, for hops that anybody may have under any of them (common practice, no source). */
import { SALLOWFELL_HILL } from "./sallowfellHill.ts";

/** From the brightest to the darkest; the village is the hill's own. */
export const SITE_SKY_MU = {
  city: 18,
  suburb: 19.5,
  village: SALLOWFELL_HILL.skyMagPerArcsec2,
  country: 21.4,
  mountain: 21.9,
} as const;

export type SiteSky = keyof typeof SITE_SKY_MU;
export const SITE_SKIES = Object.keys(SITE_SKY_MU) as readonly SiteSky[];
