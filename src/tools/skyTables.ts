/** What is computed once about the catalogue sky and kept as a table, in one module. */
export { pixelCentre } from "#core/celestial/healpix.ts";
export { frameOfB1875, lookUpCell, traceBorders } from "#core/sky/boundaries/trace.ts";
export { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
export { glowOfMap } from "#core/sky/glow/glowMap.ts";
export { measureGlow } from "#core/sky/glow/measureGlow.ts";
export { measureColours } from "#core/sky/practice/measureColours.ts";
