/** Blocks of stars as the naked eye has them: pairs closer than 3' are one star. */
import type { StarBlock } from "#core/seams/index.ts";
import {
  type BrightStars,
  brightCount,
  createBrightStars,
  GONE,
  joinClosePairs,
  listBright,
  TAKEN_IN,
} from "./joinPairs.ts";

/** Gives the blocks with close pairs joined. A block without any stays the same object, and a list without any too. */
export type AsOneStar = (blocks: readonly StarBlock[]) => readonly StarBlock[];

/**
 * Stars down to V 6.5 are joined, across the borders of tiles too: the light goes to the brighter star, in its block, and
 * the fainter one is gone from its own; ranks in such a block are not those of its tile. Invented stars and bodies that
 * move stay as they are. The last answer is kept: nothing is allocated while the list stays, and nothing is joined
 * anew while only bodies move.
 */
export function createAsOneStar(): AsOneStar {
  const stars = createBrightStars(0);
  let [asked, answer]: [readonly StarBlock[], readonly StarBlock[]] = [[], []];
  let [still, joined]: [readonly StarBlock[], readonly StarBlock[]] = [[], []];
  return (blocks) => {
    if (blocks === asked) return answer;
    const stillNow = blocks.some(({ moves }) => moves) ? blocks.filter(({ moves }) => !moves) : blocks;
    if (!sameItems(still, stillNow)) [still, joined] = [stillNow, withoutPairs(stars, stillNow)];
    asked = blocks;
    answer = stillNow === blocks ? joined : withMoving(blocks, joined);
    return answer;
  };
}

/** Pairs joined once, for a page that is printed once. */
export const asOneStar: AsOneStar = (blocks) => createAsOneStar()(blocks);

function sameItems<Item>(a: readonly Item[], b: readonly Item[]): boolean {
  return a.length === b.length && a.every((item, i) => item === b[i]);
}

function withMoving(blocks: readonly StarBlock[], joined: readonly StarBlock[]): StarBlock[] {
  let at = 0;
  return blocks.map((block) => (block.moves ? block : joined[at++]!));
}

function withoutPairs(stars: BrightStars, blocks: readonly StarBlock[]): readonly StarBlock[] {
  listBright(stars, blocks);
  if (!joinClosePairs(stars)) return blocks;
  let end = 0;
  return blocks.map((block) => {
    const begin = end;
    end += brightCount(block);
    return rewritten(stars, block, begin, end);
  });
}

/** The block with what has become of its bright stars, which are `begin` to `end` of the list. */
function rewritten(stars: BrightStars, block: StarBlock, begin: number, end: number): StarBlock {
  const { fate, x, y, z, milliMag, colourBV } = stars;
  const fates = fate.subarray(begin, end);
  if (!fates.includes(TAKEN_IN) && !fates.includes(GONE)) return block;
  const kept: number[] = [];
  for (let i = begin; i < end; i++) if (fate[i] !== GONE) kept.push(i);
  kept.sort((i, j) => milliMag[i]! - milliMag[j]! || i - j);
  const bright = end - begin;
  const count = block.count - bright + kept.length;
  const out = {
    ...block,
    count,
    dirs: new Float32Array(3 * count),
    milliMag: new Int16Array(count),
    colourBV: new Float32Array(count),
  };
  kept.forEach((i, rank) => {
    out.dirs.set([x[i]!, y[i]!, z[i]!], 3 * rank);
    out.milliMag[rank] = milliMag[i]!;
    out.colourBV[rank] = colourBV[i]!;
  });
  out.dirs.set(block.dirs.subarray(3 * bright, 3 * block.count), 3 * kept.length);
  out.milliMag.set(block.milliMag.subarray(bright, block.count), kept.length);
  out.colourBV.set(block.colourBV.subarray(bright, block.count), kept.length);
  return out;
}
