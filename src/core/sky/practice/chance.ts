/** Draws for the practice sky: integers only, so that every engine draws alike. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { mixHash32 } from "#core/celestial/hash.ts";

/** Gives numbers in [0, 1), each a multiple of 2^-32. */
export type Chance = () => number;

const WARM_UP = 8;

/**
 * A sequence of its own for each list of integers. The generator is Doty-Humphrey's "small fast counter" of 32 bits (public
 * domain, from memory): 128 bits of state, so that the sequences of neighbouring tiles do not run into one another.
 */
export function createChance(...ints: readonly number[]): Chance {
  let a = mixHash32(...ints, 1) | 0;
  let b = mixHash32(...ints, 2) | 0;
  let c = mixHash32(...ints, 3) | 0;
  let counter = 1;
  const next = (): number => {
    const sum = (a + b + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < WARM_UP; i++) next();
  return next;
}

/** Above this e^-mean comes near the smallest number, and a mean is halved: two halves make the same distribution. */
const LARGEST_MEAN = 500;

/** A count from the Poisson distribution of a mean, by products of draws (Knuth). */
export function drawPoisson(chance: Chance, mean: number): number {
  if (mean > LARGEST_MEAN) return drawPoisson(chance, mean / 2) + drawPoisson(chance, mean / 2);
  const floor = exactExp(-mean);
  let count = 0;
  for (let product = chance(); product > floor; product *= chance()) count += 1;
  return count;
}

/** One of a list. */
export function drawFrom<Item>(chance: Chance, items: readonly Item[]): Item {
  return items[Math.floor(chance() * items.length)]!;
}

/** The list in another order, each as likely. */
export function shuffled<Item>(chance: Chance, items: readonly Item[]): Item[] {
  const order = [...items];
  for (let i = order.length - 1; i > 0; i--) {
    const j = Math.floor(chance() * (i + 1));
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
