/** The glow of any sky, as a site's night gets it. */
import type { SkyRef } from "#core/seams/index.ts";
import type { GlowMuAt } from "./glowMap.ts";

/**
 * What the Milky Way adds to the night of a sky, mag/arcsec2. Each comes only when it is asked for.
 * @param coarse for a picture of cells larger than most dark nebulae
 * @throws InputError where a practice sky has no seed word
 */
export async function glowOfSky({ kind, seed }: Pick<SkyRef, "kind" | "seed">, coarse = false): Promise<GlowMuAt> {
  if (kind === "practice") {
    const { practiceGlowBeyond } = await import("./practiceGlow.ts");
    return practiceGlowBeyond(seed ?? "", coarse);
  }
  const { catalogueGlowBeyond } = await import("./catalogueGlow.ts");
  return catalogueGlowBeyond();
}
