/** HEALPix tiles of the sky (Gorski et al. 2005, ApJ 622, 759), nested numbering, and the star numbers built on them. */
export { pixelsInCone } from "./healpixCone.ts";
export { MAX_ORDER, neighbours, pixelCentre, pixelCorners, pixelOf } from "./healpixPixel.ts";
export { nuniq, starId, starIdParts } from "./starId.ts";
