/** What air and eye do to starlight from moment to moment: it twinkles, comes and goes at the limit, and at high power is a disc. */
import { UniformGroup } from "pixi.js";
import { NOTICING } from "#core/eye/noticing.ts";
import type { Frame } from "./frame.ts";
import type { FieldView } from "./view.ts";

type Uniforms = Readonly<Record<"uAir" | "uZenith" | "uLift" | "uClose", Float32Array>>;
export interface Starlight {
  readonly group: UniformGroup;
  readonly uniforms: Uniforms;
}
/**
 * Share of the air's flicker that is shown: what is slow enough for light that must never flash, under three swings a
 * second; and how much at most, rms (both set by eye, no source).
 */
const SLOW_SHARE = 0.5;
const MOST_SCATTER = 0.4;
/** Stars within so many widths of a place belong to it, and so many places are minded. */
const CLOSE_REACH = 5 / 3;
const MOST_CLOSE = 8;
/** Width of a faint star's drawn core at half its brightness, px of a star unit: that of the profile in `starShaders.ts`. */
const CORE_WIDTH_PX = 2;

export const createStarlight = (): Starlight => {
  const group = new UniformGroup({
    /** Seconds, scatter at the zenith, 1 where the faintest come and go, square of the image's width against the core's. */
    uAir: { value: new Float32Array(4), type: "vec4<f32>" },
    uZenith: { value: new Float32Array(3), type: "vec3<f32>" },
    /** How the faint are lifted, 1 where they are not; the least that a star at the limit gives, display value. */
    uLift: { value: new Float32Array([1, 0]), type: "vec2<f32>" },
    /** Where stars stand close together, and how wide each may be, radians; -1 for none. */
    uClose: { value: new Float32Array(4 * MOST_CLOSE).fill(-1), type: "vec4<f32>", size: MOST_CLOSE },
  });
  return { group: group as unknown as UniformGroup, uniforms: group.uniforms as Uniforms };
};

/** Writes the uniforms of a view. */
export const fillStarlight = ({ uniforms }: Starlight, frame: Frame, view: FieldView): void => {
  const { air, starWidthRad } = view;
  const { uAir, uZenith } = uniforms;
  const width = (starWidthRad * frame.pxPerPlane) / (CORE_WIDTH_PX * frame.pxPerStarUnit);
  uAir[0] = air ? air.seconds : 0;
  uAir[1] = air ? SLOW_SHARE * air.zenithScatter : 0;
  uAir[2] = air ? 1 : 0;
  const defocus = view.defocus ?? 0;
  uAir[3] = width * width + defocus * defocus;
  uniforms.uLift[0] = view.starLift ?? 1;
  // What is out of focus may sink under what shows.
  uniforms.uLift[1] = (view.starLeast ?? 0) / (1 + defocus * defocus);
  if (air) uZenith.set(air.zenith);
  for (let i = 0; i < MOST_CLOSE; i++) {
    const close = view.close?.[i];
    if (close) uniforms.uClose.set(close.dir, 4 * i);
    uniforms.uClose[4 * i + 3] = close ? close.widthRad : -1;
  }
};

const float = (value: number) => value.toFixed(6);

/** Each star has a number of its own, by its place: bits of it are its phases and rates. */
const HASH = `
uniform vec4 uAir;
uniform vec3 uZenith;
uint scrambled(uint h) {
  h = (h ^ (h >> 16)) * 0x7feb352du;
  h = (h ^ (h >> 15)) * 0x846ca68bu;
  return h ^ (h >> 16);
}
uint hashOf(vec3 dir) {
  uvec3 bits = floatBitsToUint(dir);
  return scrambled(bits.x + scrambled(bits.y + scrambled(bits.z)));
}
float part(uint hash, int shift) { return float((hash >> shift) & 1023u) / 1024.; }
float wave(float turns) { return sin(6.2831853 * fract(turns)); }
`;

/**
 * Twinkling: two waves of .7 to 2.2 Hz of each star's own, so that no light swings as often as three times a second; scatter
 * grows with the air mass X (Rozenberg 1966) as X^1.5; the mean light stays. Low down the colours part.
 */
const TWINKLE = `
struct Moment { float mag; float spread; float hue; };
Moment momentOf(vec3 dir, uint hash, bool isSteady) {
  Moment now = Moment(0., 1. + uAir.w, 0.);
  if (isSteady || uAir.y <= 0.) return now;
  float s = clamp(dot(dir, uZenith), 0., 1.);
  float x = 1. / (s + .025 * exp(-11. * s));
  float scatter = min(${float(MOST_SCATTER)}, uAir.y * x * sqrt(x));
  float slow = wave(uAir.x * (.7 + .5 * part(hash, 0)) + part(hash, 10));
  float quick = wave(uAir.x * (1.5 + .7 * part(hash, 20)) + part(hash, 5));
  now.mag = 1.0857 * scatter * (slow + quick - .5 * scatter);
  now.spread += .3 * uAir.w * slow;
  now.hue = .12 * clamp(.4 * x - 1., 0., 1.) * wave(uAir.x * (.9 + .6 * part(hash, 15)) + part(hash, 22));
  return now;
}
`;

/**
 * Noticing, as core/eye/noticing.ts has it: a star of margin d is there for that share of the time, in spells of 1.5 to 2.2 s
 * that it comes into and leaves softly; where nothing moves, it stands: whole from the limit up. Beside the gaze it holds,
 * brighter than it stands (drawing rule), and none comes up that would not be noticed otherwise. Stands on `GAZE`.
 */
export const NOTICE = `
float noticedAt(float d, uint hash) {
  float share = 1. / (1. + exp(d * ${float(-1 / NOTICING.scaleMag)}));
  share = clamp((share - ${float(NOTICING.missed)}) / ${float(1 - 2 * NOTICING.missed)}, 0., 1.);
  if (share <= 0. || share >= 1.) return share;
  float stands = min(1., 2. * share);
  float held = mix(stands, sqrt(stands), uEye.x);
  if (uAir.z < .5) return held;
  float at = uAir.x * (.45 + .2 * part(hash, 10)) + part(hash, 0);
  uint spell = uint(at);
  float before = step(part(scrambled(hash + spell), 4), share);
  float now = step(part(scrambled(hash + spell + 1u), 4), share);
  float comesAndGoes = mix(before, now, smoothstep(0., .4, fract(at)));
  return mix(comesAndGoes, held, uEye.x);
}
`;
/**
 * By how much a star is drawn narrower, so that it stands apart from one close by: light ends at three quarters of the width
 * and leaves a dark gap. Stands on `FRAME`.
 */
export const APART = `
uniform vec4 uClose[${MOST_CLOSE}];
float apart(vec3 dir, float radius) {
  float most = radius;
  for (int i = 0; i < ${MOST_CLOSE}; i++)
    if (distance(dir, uClose[i].xyz) < ${float(CLOSE_REACH)} * uClose[i].w)
      most = min(most, max(1.9 * uLook.y, .75 * uClose[i].w * uField.z));
  return most / radius;
}
`;
export const STARLIGHT = `${HASH}${TWINKLE}`;
