/** Colours of black bodies, to hold the tones of stars against: nothing of the project's own is in here. */

/** Temperature by B-V, K (F. J. Ballesteros 2012, EPL 97, 34008); for B-V of -0.3 to 1.8. */
export const kelvinOf = (colourBV: number): number =>
  4600 * (1 / (0.92 * colourBV + 1.7) + 1 / (0.92 * colourBV + 0.62));

/** A bell whose halves are of different widths: middle, width below it, width above it, nm. */
type Lobe = readonly [height: number, middle: number, below: number, above: number];
/** The eye of 1931 (CIE 1931 2 degree observer) as sums of lobes: C. Wyman, P.-P. Sloan & P. Shirley 2013, JCGT 2(2), 1; from memory. */
const OBSERVER: readonly (readonly Lobe[])[] = [
  [
    [1.056, 599.8, 37.9, 31.0],
    [0.362, 442.0, 16.0, 26.7],
    [-0.065, 501.1, 20.4, 26.2],
  ],
  [
    [0.821, 568.8, 46.9, 40.5],
    [0.286, 530.9, 16.3, 31.1],
  ],
  [
    [1.217, 437.0, 11.8, 36.0],
    [0.681, 459.0, 26.0, 13.8],
  ],
];
type Triple = readonly [number, number, number];
const sumOf = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0);
const lobeAt = ([height, middle, below, above]: Lobe, nm: number) =>
  height * Math.exp(-0.5 * ((nm - middle) / (nm < middle ? below : above)) ** 2);

/** CIE 1931 X, Y, Z of a black body, to an unknown scale: Planck's law from 360 to 830 nm; second radiation constant of CODATA. */
export function xyzOf(kelvin: number): Triple {
  const sums: [number, number, number] = [0, 0, 0];
  for (let nm = 360; nm <= 830; nm++) {
    const light = (nm / 500) ** -5 / Math.expm1(1.438776877e7 / (nm * kelvin));
    OBSERVER.forEach((lobes, i) => {
      sums[i]! += light * sumOf(lobes.map((lobe) => lobeAt(lobe, nm)));
    });
  }
  return sums;
}
export const xyOf = ([x, y, z]: Triple): readonly [number, number] => [x / (x + y + z), y / (x + y + z)];

/** Linear light of sRGB's primaries to X, Y, Z and back (IEC 61966-2-1). */
const TO_XYZ = [
  [0.4124, 0.3576, 0.1805],
  [0.2126, 0.7152, 0.0722],
  [0.0193, 0.1192, 0.9505],
] as const;
const FROM_XYZ = [
  [3.2406, -1.5372, -0.4986],
  [-0.9689, 1.8758, 0.0415],
  [0.0557, -0.204, 1.057],
] as const;
const times = (matrix: readonly Triple[], [a, b, c]: Triple): Triple => {
  const row = (i: number) => matrix[i]![0] * a + matrix[i]![1] * b + matrix[i]![2] * c;
  return [row(0), row(1), row(2)];
};
const linearOf = (value: number) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);
const displayOf = (light: number) => (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);

/** The brightest display colour of a black body, 0 to 255. */
export function displayRgbOf(kelvin: number): readonly number[] {
  const lights = times(FROM_XYZ, xyzOf(kelvin)).map((light) => Math.max(0, light));
  return lights.map((light) => Math.round(255 * displayOf(light / Math.max(...lights))));
}

/** How far a colour lies from the display's white, and which way: CIE 1976 u'v', in which even steps look about alike. */
export type Colour = { readonly u: number; readonly v: number; readonly saturation: number };
const uvOf = ([x, y, z]: Triple) => [(4 * x) / (x + 15 * y + 3 * z), (9 * y) / (x + 15 * y + 3 * z)] as const;
const WHITE = uvOf(times(TO_XYZ, [1, 1, 1]));
const colourOfXyz = (xyz: Triple): Colour => {
  const [u, v] = uvOf(xyz);
  return { u: u - WHITE[0], v: v - WHITE[1], saturation: Math.hypot(u - WHITE[0], v - WHITE[1]) };
};
/** @param rgb display values, 0 to 1 */
export const colourOfRgb = ([r, g, b]: Triple): Colour =>
  colourOfXyz(times(TO_XYZ, [linearOf(r), linearOf(g), linearOf(b)]));
export const blackBodyColour = (colourBV: number): Colour => colourOfXyz(xyzOf(kelvinOf(colourBV)));

/** Angle between two colours as seen from white, degrees. */
export const hueApartDeg = (a: Colour, b: Colour): number =>
  Math.abs(Math.atan2(a.u * b.v - a.v * b.u, a.u * b.u + a.v * b.v)) * (180 / Math.PI);
