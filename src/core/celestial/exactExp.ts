/**
 * Exponential and logarithm from + - * / alone (and exact bit patterns for powers of two), so that every engine gives the
 * same bits. Method and coefficients: fdlibm (e_exp.c, e_log.c), from memory, checked by test.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy, modify, and distribute this
 * software is freely granted, provided that this notice is preserved.
 */

const LN2_HIGH = 0.6931471803691238;
const LN2_LOW = 1.9082149292705877e-10;
const INV_LN2 = Math.LOG2E;
const LOG10_2_HIGH = 0.30102999566361177;
const LOG10_2_LOW = 3.694239077158931e-13;
const LOG2_10 = 3.321928094887362;
const LN10 = Math.LN10;
const SQRT_HALF = Math.SQRT1_2;
const TWO_54 = 18014398509481984;

const view = new DataView(new ArrayBuffer(8));

/** 2^k for -1022 <= k <= 1023. */
function twoPower(k: number): number {
  view.setUint32(0, (k + 1023) * 1048576);
  view.setUint32(4, 0);
  return view.getFloat64(0);
}

/** v * 2^k; two steps where 2^k itself would leave the range. */
function scaled(v: number, k: number): number {
  if (k > 1023) return v * twoPower(1023) * twoPower(Math.min(k - 1023, 1023));
  if (k < -1022) return v * twoPower(Math.max(k + 54, -1022)) * twoPower(-54);
  return v * twoPower(k);
}

/** e^(high - low) for |high - low| <= 0.35 or so. */
function kernelExp(high: number, low: number): number {
  const r = high - low;
  const t = r * r;
  const c =
    r -
    t *
      (0.16666666666666602 +
        t *
          (-0.0027777777777015593 +
            t * (0.00006613756321437934 + t * (-0.0000016533902205465252 + t * 4.1381367970572385e-8))));
  return 1 - (low - (r * c) / (2 - c) - high);
}

/** e^x; relative error about 1 ulp. Infinity above 709.78, 0 below -745.13. */
export function exactExp(x: number): number {
  if (x > 709.782712893384) return Number.POSITIVE_INFINITY;
  if (x < -745.1332191019411) return 0;
  const k = Math.floor(x * INV_LN2 + 0.5);
  return Number.isNaN(x) ? x : scaled(kernelExp(x - k * LN2_HIGH, k * LN2_LOW), k);
}

/** 10^0 .. 10^22: the powers of ten that a double holds exactly. */
const POWERS_OF_TEN: readonly number[] = [
  1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20,
  1e21, 1e22,
];

/** 10^x; relative error about 1 ulp, exact for whole 0 <= x <= 22. Infinity above 308.25, 0 below -323.3. */
export function exactPow10(x: number): number {
  if (x > 308.2547155599167) return Number.POSITIVE_INFINITY;
  if (x < -323.6) return 0;
  if (Number.isNaN(x)) return x;
  const whole = POWERS_OF_TEN[Math.abs(x)];
  if (whole !== undefined) return x < 0 ? 1 / whole : whole;
  const k = Math.floor(x * LOG2_10 + 0.5);
  const rest = x - k * LOG10_2_HIGH - k * LOG10_2_LOW;
  return scaled(kernelExp(rest * LN10, 0), k);
}

/** Natural logarithm; relative error about 1 ulp. -Infinity at 0, NaN below. */
export function exactLog(x: number): number {
  if (x < 0 || Number.isNaN(x)) return Number.NaN;
  if (x === 0) return Number.NEGATIVE_INFINITY;
  if (x === Number.POSITIVE_INFINITY) return x;
  const normal = x < 2.2250738585072014e-308 ? x * TWO_54 : x;
  view.setFloat64(0, normal);
  const top = view.getUint32(0);
  let k = Math.floor(top / 1048576) - 1023 - (normal === x ? 0 : 54);
  view.setUint32(0, (top % 1048576) + 1022 * 1048576);
  // The mantissa as a number in [0.5, 1), then in [sqrt(1/2), sqrt 2).
  let m = view.getFloat64(0);
  if (m < SQRT_HALF) m *= 2;
  else k += 1;
  return k * LN2_HIGH + kernelLog(m - 1, k * LN2_LOW);
}

/** log(1 + f) + low for 1 + f in [sqrt(1/2), sqrt 2). */
function kernelLog(f: number, low: number): number {
  const s = f / (2 + f);
  const z = s * s;
  const w = z * z;
  const t1 = w * (0.3999999999940942 + w * (0.22222198432149784 + w * 0.15313837699209373));
  const t2 = z * (0.6666666666666735 + w * (0.2857142874366239 + w * (0.1818357216161805 + w * 0.14798198605116586)));
  const half = 0.5 * f * f;
  return f - (half - (s * (half + t1 + t2) + low));
}
