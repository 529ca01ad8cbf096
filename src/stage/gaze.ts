/** Where the eye looks in the field: straight at a place, where faint things vanish, or beside everything, where they come up. */
import type { FieldView } from "./view.ts";

/**
 * A faint thing is gone within the fovea and as it was from three times its radius on, where there are as many rods as cones
 * (0.5 and 1.5 degrees; after Curcio et al. 1990, J. Comp. Neurol. 292, 497, from memory).
 */
const ROD_RICH = 3;
/** By how much faint stars come up beside the gaze, mag, and to how far over the limit, fading out from a magnitude on (drawing rule). */
const COMES_UP = { mag: 0.35, fromMag: 1, toMag: 2.2 } as const;
/** Stars so much brighter than what a stare reaches are the cones' own: a stare takes nothing of them. */
const CONES_OWN_MAG = 1;

/** However small the field: a fovea of no size would have no edge. */
const LEAST_FOVEA_PX = 0.5;

/** Shader text over the uniforms of `frame.ts`: `uGaze` is place, radius (device px) and loss, `uEye` beside, lack, seconds. */
export const GAZE = `
uniform vec4 uGaze;
uniform vec4 uEye;
float straightAt(vec2 window) {
  return uGaze.w <= 0. ? 0. : 1. - smoothstep(uGaze.z, ${ROD_RICH.toFixed(1)} * uGaze.z, distance(window, uGaze.xy));
}
`;

/** How far a star of margin d over the limit is over it where it stands before the gaze, and by how much it is drawn brighter. */
export const STAR_GAZE = `
float underGaze(float d, vec2 window) {
  if (uGaze.w <= 0.) return d;
  return d - uGaze.w * straightAt(window) * (1. - smoothstep(uGaze.w, uGaze.w + ${CONES_OWN_MAG.toFixed(1)}, d));
}
float comesUp(float d) {
  if (uEye.x <= 0.) return 0.;
  return uEye.x * ${COMES_UP.mag.toFixed(2)} * (1. - smoothstep(${COMES_UP.fromMag.toFixed(1)}, ${COMES_UP.toMag.toFixed(1)}, d));
}
`;

/**
 * Light of an object by its margin m, as a share: under half a magnitude it comes and goes in waves of 5 to 9 s, to nothing at
 * a margin of 0; where nothing moves it stands at its mean. Beside the gaze it stays, and is brighter (drawing rules, after the
 * classes of core/eye/margin.ts). `keptStraight` is what a stare leaves of it.
 */
export const OBJECT_GAZE = `
float presence(float m, float seed) {
  float most = smoothstep(-.9, 0., m);
  float least = smoothstep(0., .5, m);
  float at = uEye.z * (.11 + .09 * seed) + seed * 7.;
  float wave = uEye.w > .5 ? .5 + .5 * sin(6.2831853 * fract(at)) : .5;
  float held = most * (1. + .3 * (1. - smoothstep(.5, 1.5, m)));
  return mix(mix(least, most, wave), held, uEye.x);
}
float keptStraight(float m) {
  return 1. - min(1., uGaze.w) * (1. - smoothstep(uGaze.w - .5, uGaze.w + .5, m));
}
`;

/** The uniforms that the shaders above read. */
export interface GazeUniforms {
  readonly uGaze: Float32Array;
  readonly uEye: Float32Array;
}
/** The field's centre on the canvas, and how fine it is. */
interface Place {
  readonly leftPx: number;
  readonly downPx: number;
  readonly pxPerCssPx: number;
}
/** Writes the uniforms of a view. Without a gaze the eye is adapted and looks about freely. */
export function fillGaze({ uGaze, uEye }: GazeUniforms, { leftPx, downPx, pxPerCssPx }: Place, view: FieldView): void {
  const { gaze, air } = view;
  uGaze[0] = leftPx + (gaze?.xCssPx ?? 0) * pxPerCssPx;
  uGaze[1] = downPx + (gaze?.yCssPx ?? 0) * pxPerCssPx;
  uGaze[2] = Math.max(LEAST_FOVEA_PX, (gaze?.foveaCssPx ?? 0) * pxPerCssPx);
  uGaze[3] = gaze?.lossMag ?? 0;
  uEye[0] = gaze?.beside ?? 0;
  uEye[1] = gaze?.lackMag ?? 0;
  uEye[2] = air?.seconds ?? 0;
  uEye[3] = air ? 1 : 0;
}
