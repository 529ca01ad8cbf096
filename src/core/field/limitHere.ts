/** How faint an instrument shows stars where it points. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import type { Dir, GearId, Seeing } from "#core/seams/index.ts";

export type LimitHere = (seeing: Seeing, pointing: Dir, gear: GearId) => ReturnType<Seeing["star"]>;

/** The last answer is kept: a tube that stands is asked about with each frame that its stars twinkle. */
export function createLimitHere(): LimitHere {
  const at = new Float64Array(3);
  let known: Seeing | null = null;
  let through: GearId = "";
  let answer = { avertedMilliMag: 0, directMilliMag: 0 } as ReturnType<Seeing["star"]>;
  return (seeing, pointing, gear) => {
    const isSame = at[0] === pointing[0] && at[1] === pointing[1] && at[2] === pointing[2];
    if (seeing === known && gear === through && isSame) return answer;
    answer = seeing.star(pointing, AVERAGE_BV, gear);
    at.set(pointing);
    [known, through] = [seeing, gear];
    return answer;
  };
}
