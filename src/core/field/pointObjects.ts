/** Objects that look like stars and are in no catalogue of them: minor planets. */
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import type { SkyObject, StarBlock } from "#core/seams/index.ts";
import { pointBlock } from "./pointBlock.ts";

/** Gives the blocks with the points among the objects beside them; where there are none, the very blocks. */
export type WithPoints = (blocks: readonly StarBlock[], objects: readonly SkyObject[]) => readonly StarBlock[];

function blockOf(objects: readonly SkyObject[]): StarBlock | null {
  const points = objects.filter(({ kind }) => kind === "minorPlanet");
  if (points.length === 0) return null;
  return pointBlock(points.map(({ dir, magV }) => ({ dir, milliMag: Math.round(1000 * magV), colourBV: AVERAGE_BV })));
}

/** The last answer is kept: nothing is allocated while blocks and objects stay the same lists. */
export function createWithPoints(): WithPoints {
  let known: readonly SkyObject[] | null = null;
  let block: StarBlock | null = null;
  let asked: readonly StarBlock[] = [];
  let answer: readonly StarBlock[] = [];
  return (blocks, objects) => {
    if (objects === known && blocks === asked) return answer;
    if (objects !== known) [known, block] = [objects, blockOf(objects)];
    asked = blocks;
    answer = block ? [...blocks, block] : blocks;
    return answer;
  };
}
