/** Whether the eye sees the spikes of a bright star. */
import { spikeShare } from "#core/optics/vanes.ts";
import { candelaOfMu, log10 } from "./light.ts";
import { DARKEST_CANDELA, riccoSr } from "./threshold.ts";

/**
 * By how much the middle of a spike is fainter to the eye than its star, mag: the eye adds up the light along it as far as it
 * does so over any patch, the width of Ricco's area (Crumey 2014, eq. 25, 28). A spike as bright as a star at the limit is
 * just seen.
 * @param atTheEyeMu the sky before the eye, mag/arcsec2
 */
export function spikeBelowMag(apertureMm: number, magnification: number, atTheEyeMu: number): number {
  const wideSr = riccoSr(Math.max(DARKEST_CANDELA, candelaOfMu(atTheEyeMu)));
  const spanRad = Math.sqrt((4 * wideSr) / Math.PI) / magnification;
  return -2.5 * log10(spikeShare(apertureMm, spanRad));
}
