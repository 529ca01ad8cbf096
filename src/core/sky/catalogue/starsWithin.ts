/** The stars of a circle, exactly. */
import { exactSin } from "#core/celestial/exactMath.ts";
import { starId } from "#core/celestial/starId.ts";
import type { Dir, Resident, StarBlock, StarId } from "#core/seams/index.ts";

export type FoundStar = {
  readonly id: StarId;
  readonly dir: Dir;
  readonly milliMag: number;
  readonly colourBV: number;
  readonly invented: boolean;
};

/**
 * Every star of the blocks within `radiusRad` of the centre (the edge counts as inside) and down to the limit, brightest
 * first, equally bright ones by number. Only exact mathematics: the same list in every engine.
 */
export function starsWithin(
  { blocks }: Pick<Resident, "blocks">,
  centre: Dir,
  radiusRad: number,
  limitMilliMag: number,
): FoundStar[] {
  const chord = radiusRad >= Math.PI ? 3 : 2 * exactSin(radiusRad / 2);
  const found: FoundStar[] = [];
  for (const block of blocks) collect(block, centre, chord * chord, limitMilliMag, found);
  return found.sort((a, b) => a.milliMag - b.milliMag || a.id - b.id);
}

/** Compares squared chords: they keep their digits where the cosine of a small angle has lost them. */
function collect(block: StarBlock, [x, y, z]: Dir, chord2: number, limitMilliMag: number, found: FoundStar[]): void {
  const { dirs, milliMag } = block;
  for (let i = 0; i < block.count && milliMag[i]! <= limitMilliMag; i++) {
    const dx = dirs[3 * i]! - x;
    const dy = dirs[3 * i + 1]! - y;
    const dz = dirs[3 * i + 2]! - z;
    if (dx * dx + dy * dy + dz * dz > chord2) continue;
    found.push({
      id: starId(block.key, i),
      dir: [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!],
      milliMag: milliMag[i]!,
      colourBV: block.colourBV[i]!,
      invented: block.invented,
    });
  }
}
