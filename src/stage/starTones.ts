/**
 * Tones of bright stars by B-V, and the shader text that is made of them. They are a painter's, held against black bodies by
 * a test: of their hue to the eye, and drawn paler, as an eye that is used to the dark sees them.
 */

/** B-V, and red, green and blue of the tone there, 0 to 255; even steps between, and beyond the ends the tone of the end. */
export const STAR_TONES: readonly (readonly [colourBV: number, red: number, green: number, blue: number])[] = [
  [-0.3, 160, 190, 255],
  [0, 205, 220, 255],
  [0.4, 245, 245, 255],
  [0.7, 255, 240, 214],
  [1.1, 255, 214, 160],
  [1.8, 255, 178, 112],
];
/** A star takes on no more than this share of its tone; the rest is white. */
export const MOST_TONE = 0.62;

const vec3 = (i: number) => `vec3(${STAR_TONES[i]!.slice(1)})`;
const steps = STAR_TONES.slice(1).map(([bv], i) => {
  const [from] = STAR_TONES[i]!;
  return `tone = mix(tone, ${vec3(i + 1)}, clamp((bv - ${from.toFixed(1)}) / ${(bv - from).toFixed(1)}, 0., 1.));`;
});

/** `tintOf(d, bv)`: the colour of a star d mag brighter than the limit, which is white up to 2.2. */
export const COLOUR = `
vec3 tintOf(float d, float bv) {
  vec3 tone = ${vec3(0)};
  ${steps.join("")}
  return mix(vec3(1.), tone / 255., clamp((d - 2.2) / 3., 0., 1.) * ${MOST_TONE});
}
`;
