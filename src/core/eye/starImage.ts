/** How wide a star is in an instrument: air and aperture make a disc of it, which the eye tells from a point at high power. */
import { imageArcsec, seeingArcsec } from "./air.ts";
import { EYE_ARCSEC } from "./doubles.ts";
import { isNaked, type Optics } from "./instrument.ts";

/**
 * Width of a star's image on the sky, arcsec at half its brightness: the air's (X^0.6) and the aperture's (1.03 lambda / D)
 * together. 0 where the eye takes it for a point: without a glass, and below the power that brings it to the eye's own 2'.
 * @param zenithArcsec width by the air at the zenith
 */
export function starWidthArcsec(
  optics: Pick<Optics, "kind" | "apertureMm" | "magnification">,
  zenithArcsec: number,
  airMass: number,
): number {
  if (isNaked(optics)) return 0;
  const widthArcsec = imageArcsec(seeingArcsec(zenithArcsec, airMass), optics.apertureMm);
  return widthArcsec * optics.magnification > EYE_ARCSEC ? widthArcsec : 0;
}
