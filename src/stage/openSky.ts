/**
 * The open sky of the naked eye and the sight: light by height and by the Sun's side. Worked out at the corners of a round
 * net and mixed between them, which is exact to half a step of the display and costs a pixel next to nothing.
 */
import { type Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { type RgbOut, surfaceColour, TABLE, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import {
  addStop,
  createRingShader,
  createRingStops,
  FINE,
  NET,
  RING_STOPS,
  RING_VERTEX,
  type RingStops,
  SOFT_FRAGMENT,
  SOFT_VERTEX,
  stripsSize,
} from "./rings.ts";
import { createTwilight, type Twilight, twilightOf } from "./twilight.ts";
import type { FieldHorizon, FieldView } from "./view.ts";

type Uniforms = Record<"uHorizonFromView" | "uSun" | "uScale" | "uHigh" | "uPale" | "uWarm", Float32Array>;
export interface OpenSkyLayer {
  readonly sky: DrawCall;
  readonly mask: DrawCall;
  readonly netStops: RingStops;
  readonly maskStops: RingStops;
  readonly uniforms: Uniforms;
  readonly group: UniformGroup;
  readonly twilight: Twilight;
}
/** Of the table, at the very stop; and of the sky, just past the rim. */
const STOP_COVER = 0.95;
const PAST_RIM = 0.5;

/** The warm light falls as exp(-(angle / scale)^2), the angle's square by 2 (1 - cos). */
const VERTEX = `
uniform mat3 uHorizonFromView;
uniform vec2 uSun;
uniform vec2 uScale;
uniform vec3 uHigh;
uniform vec3 uPale;
uniform vec3 uWarm;
void main() {
  vec2 window = ringWindow();
  vec2 p = (window - uField.xy) / uField.z;
  float s = .25 * dot(p, p);
  vec3 v = uLook.z > .5 ? vec3(p, 1. - s) / (1. + s) : normalize(vec3(p, 1.));
  vec3 h = v * uHorizonFromView;
  float warm = exp((dot(h.xy, uSun) - 1.) * uScale.y);
  softly(uHigh + uPale * exp(-asin(clamp(h.z, 0., 1.)) * uScale.x) + uWarm * warm, window);
}`;

/** @param net - rings of `NET` pieces, @param fine - rings of `FINE` pieces */
export const createOpenSkyLayer = (frame: Frame, net: Geometry, fine: Geometry): OpenSkyLayer => {
  const netStops = createRingStops();
  const maskStops = createRingStops();
  const colour = () => ({ value: new Float32Array(3), type: "vec3<f32>" as const });
  const group = new UniformGroup({
    uHorizonFromView: { value: new Float32Array(9), type: "mat3x3<f32>" },
    uSun: { value: new Float32Array(2), type: "vec2<f32>" },
    uScale: { value: new Float32Array(2), type: "vec2<f32>" },
    uHigh: colour(),
    uPale: colour(),
    uWarm: colour(),
  }) as unknown as UniformGroup;
  const sky = new Shader({
    glProgram: programOf("open-sky", [FRAME, PROJECT, RING_VERTEX, SOFT_VERTEX, VERTEX], [SOFT_FRAGMENT]),
    resources: { frame: frame.group, stops: netStops.group, horizon: group },
  });
  return {
    netStops,
    maskStops,
    group,
    uniforms: group.uniforms as Uniforms,
    twilight: createTwilight(),
    sky: drawCall(net, sky, "opaque", "triangle-list"),
    mask: drawCall(fine, createRingShader(frame.group, maskStops), "over", "triangle-list"),
  };
};

/** out = horizonFromIcrs * transpose(viewFromIcrs), row by row. */
const writeHorizonFromView = (horizon: FieldHorizon, view: FieldView, out: Float32Array): void => {
  const h = horizon.horizonFromIcrs;
  const v = view.viewFromIcrs;
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += h[row * 3 + k]! * v[column * 3 + k]!;
      out[row * 3 + column] = sum;
    }
  }
};
export const setSurface = (from: ArrayLike<number>, view: FieldView, out: RgbOut): void =>
  surfaceColour(from[0]!, from[1]!, from[2]!, view, out);

const none = new Float32Array(3);
/** Draws the sky over all the canvas that may show any of it. */
export const drawOpenSky = (
  renderer: WebGLRenderer,
  layer: OpenSkyLayer,
  frame: Frame,
  view: FieldView,
  horizon: FieldHorizon,
): void => {
  const { uniforms: u, twilight, netStops } = layer;
  twilightOf(twilight, view.skyRgb, horizon);
  writeHorizonFromView(horizon, view, u.uHorizonFromView);
  u.uSun[0] = Math.cos(horizon.sunAzimuthRad);
  u.uSun[1] = -Math.sin(horizon.sunAzimuthRad);
  u.uScale[0] = 1 / twilight.paleRad;
  u.uScale[1] = 2 / twilight.warmRad ** 2;
  setSurface(twilight.high, view, u.uHigh);
  setSurface(twilight.pale, view, u.uPale);
  setSurface(twilight.warm, view, u.uWarm);
  netStops.count = 0;
  const reach = (frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx) + frame.pxPerCssPx;
  for (let i = 0; i < RING_STOPS; i++) addStop(netStops, (reach * i) / (RING_STOPS - 1), none);
  layer.sky.size = stripsSize(RING_STOPS - 1, NET);
  issue(renderer, layer.sky);
};

const table = new Float32Array(3);
/** Lays the table over what the barrel hides: a soft stop, and half of what runs on past the rim. The rim covers the rest. */
export const drawMask = (renderer: WebGLRenderer, layer: OpenSkyLayer, frame: Frame, view: FieldView): void => {
  const { maskStops: stops, mask } = layer;
  tokenColour(TABLE, view, table);
  stops.count = 0;
  const out = 1 - view.light;
  if (out > 0) addStop(stops, 0, table, out);
  addStop(stops, frame.stopPx - frame.softPx, table, out);
  addStop(stops, frame.stopPx, table, 1 - (1 - STOP_COVER) * view.light);
  if (frame.spillPx > 0) {
    addStop(stops, frame.rimOuterPx, table, 1);
    addStop(stops, frame.rimOuterPx, table, 1 - PAST_RIM * view.light);
    addStop(stops, frame.rimOuterPx + frame.spillPx, table, 1);
    addStop(stops, Math.max(frame.farPx, frame.rimOuterPx + frame.spillPx), table, 1);
  }
  mask.size = stripsSize(stops.count - 1, FINE);
  issue(renderer, mask);
};
