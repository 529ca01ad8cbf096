import {
  exactAcos,
  exactAsin,
  exactAtan2,
  exactCos,
  exactExp,
  exactHypot3,
  exactLog,
  exactPow10,
  exactSin,
  exactTan,
} from "./exactMath.ts";
import { fnv1a32 } from "./hash.ts";

const ROUNDS = 12_000;

/**
 * One hash over 120,000 results of the exact functions, bit by bit: two engines that agree on it agree on all of them. The
 * arguments come from a fixed sequence (a 32-bit congruential generator).
 */
export function exactMathGolden(): number {
  const view = new DataView(new ArrayBuffer(8));
  const bytes = new Uint8Array(view.buffer);
  let state = 20000101;
  let hash: number | undefined;
  const next = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) | 0;
    return state / 2147483648;
  };
  const take = (value: number): void => {
    view.setFloat64(0, value);
    hash = fnv1a32(bytes, hash);
  };
  for (let i = 0; i < ROUNDS; i++) {
    const a = next();
    const b = next();
    take(exactSin(a * 1e4));
    take(exactCos(b * 10));
    take(exactTan(a));
    take(exactAtan2(a, b));
    take(exactAsin(a));
    take(exactAcos(b));
    take(exactExp(a * 30));
    take(exactLog(1 + a));
    take(exactPow10(b * 12));
    take(exactHypot3(a, b, a * b));
  }
  return fnv1a32([], hash);
}
