/** Answers about what is here, kept and handed out again as long as their lists stay the same. */
import type { Resident, StarBlock, TileKey } from "#core/seams/index.ts";

/** A few callers ask in turn (field, finder, sheet, ahead): each finds its own last answer again. */
const KEPT = 8;

export type Residents = {
  /** The answer with these lists: an earlier one where its lists are equal, else a new one with a version never used before. */
  readonly answerFor: (blocks: readonly StarBlock[], missing: readonly TileKey[]) => Resident;
  /** Lets go of every answer that holds one of the blocks. */
  readonly drop: (blocks: ReadonlySet<StarBlock>) => void;
};

export function createResidents(): Residents {
  let kept: Resident[] = [];
  let version = 0;
  return {
    answerFor(blocks, missing) {
      for (let i = 0; i < kept.length; i++) {
        const known = kept[i]!;
        if (!sameItems(known.blocks, blocks) || !sameItems(known.missing, missing)) continue;
        // To the front, so that the answer that nobody asks for any more is the one to go.
        for (let j = i; j > 0; j--) kept[j] = kept[j - 1]!;
        kept[0] = known;
        return known;
      }
      version += 1;
      const answer = { blocks: [...blocks], missing: [...missing], complete: missing.length === 0, version };
      kept.unshift(answer);
      kept.length = Math.min(kept.length, KEPT);
      return answer;
    },
    drop(blocks) {
      kept = kept.filter((answer) => !answer.blocks.some((block) => blocks.has(block)));
    },
  };
}

function sameItems<Item>(a: readonly Item[], b: readonly Item[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
}

/** A list that is filled anew at each look. Emptying an array throws its store away; this one keeps it. */
export type Refilled<Item> = {
  readonly begin: () => void;
  readonly add: (item: Item) => void;
  /** The list as it is now. */
  readonly end: () => readonly Item[];
};

export function createRefilled<Item>(): Refilled<Item> {
  const items: Item[] = [];
  let count = 0;
  return {
    begin() {
      count = 0;
    },
    add(item) {
      items[count++] = item;
    },
    end() {
      if (items.length !== count) items.length = count;
      return items;
    },
  };
}
