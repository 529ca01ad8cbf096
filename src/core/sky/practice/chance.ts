/** Draws for the practice sky: integers only, so that every engine draws alike. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { mixHash32, mixHashOn } from "#core/celestial/hash.ts";

/** Gives numbers in [0, 1), each a multiple of 2^-32. */
export type Chance = () => number;

const WARM_UP = 8;

/** Where a sequence stands: four integers. */
export type ChanceState = Int32Array;
export const createChanceState = (): ChanceState => new Int32Array(4);

/**
 * A sequence of its own for each list of integers. The generator is Doty-Humphrey's "small fast counter" of 32 bits (public
 * domain, from memory): 128 bits of state, so that the sequences of neighbouring tiles do not run into one another.
 */
export function createChance(...ints: readonly number[]): Chance {
  const state = createChanceState();
  beginChance(state, mixHash32(...ints));
  return () => drawChance(state);
}

/** Puts a state to the beginning of the sequence of some integers, of which the hash is given: nothing is allocated. */
export function beginChance(state: ChanceState, hash: number): void {
  state[0] = mixHashOn(hash, 1);
  state[1] = mixHashOn(hash, 2);
  state[2] = mixHashOn(hash, 3);
  state[3] = 1;
  for (let i = 0; i < WARM_UP; i++) drawChance(state);
}

/** The next number in [0, 1) of a sequence. */
export function drawChance(state: ChanceState): number {
  const b = state[1]!;
  const c = state[2]!;
  const counter = state[3]!;
  const sum = (state[0]! + b + counter) | 0;
  state[3] = counter + 1;
  state[0] = b ^ (b >>> 9);
  state[1] = c + (c << 3);
  state[2] = ((c << 21) | (c >>> 11)) + sum;
  return (sum >>> 0) / 4294967296;
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
