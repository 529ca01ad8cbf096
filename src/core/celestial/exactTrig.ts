/**
 * Sine, cosine and arc tangent from + - * / sqrt alone, so that every engine gives the same bits.
 * Method and coefficients: fdlibm (k_sin.c, k_cos.c, e_rem_pio2.c, s_atan.c, e_atan2.c), from memory, checked by test.
 * Copyright (C) 1993 by Sun Microsystems, Inc. All rights reserved. Permission to use, copy, modify, and distribute this
 * software is freely granted, provided that this notice is preserved.
 */

const INV_PIO2 = 0.6366197723675814;
// pi/2 in three parts: the first two have 33 bits, so their products with a turn count below 2^20 are exact.
const PIO2_1 = 1.5707963267341256;
const PIO2_2 = 6.077100506303966e-11;
const PIO2_2_TAIL = 2.0222662487959506e-21;
const PI = Math.PI;
const PI_LOW = 1.2246467991473532e-16;

function kernelSin(x: number, tail: number): number {
  const z = x * x;
  const v = z * x;
  const r =
    0.00833333333332249 +
    z *
      (-0.0001984126982985795 +
        z * (0.0000027557313707070068 + z * (-2.5050760253406863e-8 + z * 1.58969099521155e-10)));
  return x - (z * (0.5 * tail - v * r) - tail - v * -0.16666666666666632);
}

function kernelCos(x: number, tail: number): number {
  const z = x * x;
  const r =
    z *
    (0.0416666666666666 +
      z *
        (-0.001388888888887411 +
          z *
            (0.00002480158728947673 +
              z * (-2.7557314351390663e-7 + z * (2.087572321298175e-9 + z * -1.1359647557788195e-11)))));
  const half = 0.5 * z;
  const w = 1 - half;
  return w + (1 - w - half + (z * r - x * tail));
}

/** What is left of an angle beyond whole quarter turns, as a sum of two, at most pi/4; and which quarter it is, 0 to 3. */
let head = 0;
let tail = 0;
function reduce(x: number): number {
  const turns = Math.floor(x * INV_PIO2 + 0.5);
  // Second step of e_rem_pio2 always taken: 118 bits of pi/2.
  const t = x - turns * PIO2_1;
  const w = turns * PIO2_2;
  const y = t - w;
  const low = turns * PIO2_2_TAIL - (t - y - w);
  head = y - low;
  tail = y - head - low;
  return turns - 4 * Math.floor(turns / 4);
}

/** Sine of what {@link reduce} left, in a quarter counted from 0 to 4. */
function sineIn(quarter: number): number {
  const value = quarter & 1 ? kernelCos(head, tail) : kernelSin(head, tail);
  return quarter === 2 || quarter === 3 ? -value : value;
}

/** Sine of `xRad`; absolute error below 2.3e-16 for |x| <= 1e6. Infinity and NaN give NaN. */
export function exactSin(xRad: number): number {
  if (xRad <= 0.785 && xRad >= -0.785) return kernelSin(xRad, 0);
  return sineIn(reduce(xRad));
}

/** Cosine of `xRad`; absolute error below 2.3e-16 for |x| <= 1e6. Infinity and NaN give NaN. */
export function exactCos(xRad: number): number {
  if (xRad <= 0.785 && xRad >= -0.785) return kernelCos(xRad, 0);
  return sineIn(reduce(xRad) + 1);
}

/** Writes `radius` times cosine and sine of `xRad`, bit by bit those of {@link exactCos} and {@link exactSin}. */
export function exactCircle(xRad: number, radius: number, out: { [i: number]: number }): void {
  if (xRad <= 0.785 && xRad >= -0.785) {
    out[0] = radius * kernelCos(xRad, 0);
    out[1] = radius * kernelSin(xRad, 0);
    return;
  }
  const quarter = reduce(xRad);
  out[0] = radius * sineIn(quarter + 1);
  out[1] = radius * sineIn(quarter);
}

/** Tangent of `xRad`, as sine over cosine; relative error below 5e-16 away from its poles. */
export function exactTan(xRad: number): number {
  return exactSin(xRad) / exactCos(xRad);
}

/** Arc tangent of x >= 0 by the four break points 7/16, 11/16, 19/16, 39/16. */
function arcTangent(x: number): number {
  if (x < 0.4375) return x - x * arcSeries(x);
  if (x < 0.6875) return shifted((2 * x - 1) / (2 + x), 0.4636476090008061, 2.2698777452961687e-17);
  if (x < 1.1875) return shifted((x - 1) / (x + 1), 0.7853981633974483, 3.061616997868383e-17);
  if (x < 2.4375) return shifted((x - 1.5) / (1 + 1.5 * x), 0.982793723247329, 1.3903311031230998e-17);
  return shifted(-1 / x, 1.5707963267948966, 6.123233995736766e-17);
}

function shifted(u: number, high: number, low: number): number {
  return high - (u * arcSeries(u) - low - u);
}

/** 1 - atan(u) / u for |u| below 7/16. */
function arcSeries(u: number): number {
  const z = u * u;
  const w = z * z;
  const odd =
    z *
    (0.3333333333333293 +
      w *
        (0.14285714272503466 +
          w *
            (0.09090887133436507 + w * (0.06661073137387531 + w * (0.049768779946159324 + w * 0.016285820115365782)))));
  const even =
    w *
    (-0.19999999999876483 +
      w * (-0.11111110405462356 + w * (-0.0769187620504483 + w * (-0.058335701337905735 + w * -0.036531572744216916))));
  return odd + even;
}

/** Angle of the point (x, y), radians in [-pi, pi], signed zeros as in `Math.atan2`; error at most about 1 ulp of the result. */
export function exactAtan2(y: number, x: number): number {
  if (Number.isNaN(x) || Number.isNaN(y)) return Number.NaN;
  const yNegative = y < 0 || Object.is(y, -0);
  const xNegative = x < 0 || Object.is(x, -0);
  const ay = Math.abs(y);
  const ax = Math.abs(x);
  let angle: number;
  if (ay === 0) angle = 0;
  else if (ax === Number.POSITIVE_INFINITY) angle = ay === Number.POSITIVE_INFINITY ? PI / 4 : 0;
  else angle = arcTangent(ay / ax);
  if (xNegative) angle = PI - (angle - PI_LOW);
  return yNegative ? -angle : angle;
}

/** Arc sine, radians; NaN outside [-1, 1]. */
export function exactAsin(x: number): number {
  return exactAtan2(x, Math.sqrt((1 - x) * (1 + x)));
}

/** Arc cosine, radians in [0, pi]; NaN outside [-1, 1]. */
export function exactAcos(x: number): number {
  return exactAtan2(Math.sqrt((1 - x) * (1 + x)), x);
}
