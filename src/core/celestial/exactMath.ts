/**
 * Mathematics that gives the same bits in every engine: only + - * / and sqrt, which IEEE 754 rounds exactly, are used.
 * `Math.sin` and its kin differ in the last bit between engines; whatever decides (the practice generator, compiling,
 * scoring) uses these instead.
 */
export { exactExp, exactLog, exactPow10 } from "./exactExp.ts";
export { exactAcos, exactAsin, exactAtan2, exactCircle, exactCos, exactSin, exactTan } from "./exactTrig.ts";

/** Length of (x, y, z); no guard against overflow, which unit vectors do not need. */
export function exactHypot3(x: number, y: number, z: number): number {
  return Math.sqrt(x * x + y * y + z * z);
}

/** Nearest whole number, halves upward; never -0. */
export function roundHalfUp(x: number): number {
  return Math.floor(x + 0.5) + 0;
}
