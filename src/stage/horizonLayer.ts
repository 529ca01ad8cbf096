/** The open sky of the naked eye and the sight: light by height and by the Sun's side, and the ground below. */
import { BufferImageSource, type Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { DITHER, FRAME, PROJECT, programOf, THROUGH } from "./glsl.ts";
import { type RgbOut, surfaceColour, TABLE, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { addStop, createRingStops, RING_VERTEX, type RingStops, stripStart, stripsSize } from "./rings.ts";
import { SKYLINE_ROWS, SKYLINE_SAMPLES, SKYLINE_TOP_DEG, skylineTexels, WINDOW } from "./skyline.ts";
import { createTwilight, type Twilight, twilightOf } from "./twilight.ts";
import type { FieldHorizon, FieldView, Rgb } from "./view.ts";

const DEG = Math.PI / 180;
/** Nothing on the ground reaches higher. */
const HIGHEST_DEG = 9;
const LIT_WINDOW: Rgb = [0.91, 0.66, 0.27];

type Uniforms = {
  uHorizonFromView: Float32Array;
  uSun: Float32Array;
  uScale: Float32Array;
} & Record<"uHigh" | "uPale" | "uWarm" | "uNear" | "uFar" | "uWindow" | "uTable", Float32Array>;

export interface HorizonLayer {
  readonly sky: DrawCall;
  readonly ground: DrawCall;
  readonly stops: RingStops;
  readonly uniforms: Uniforms;
  readonly twilight: Twilight;
}

const VERTEX = [FRAME, PROJECT, RING_VERTEX, "void main() { gl_Position = clipOf(ringWindow()); }"];
const LOOK_AT = `
uniform mat3 uHorizonFromView;
uniform vec3 uTable;
vec3 horizonDir() {
  vec2 p = (gl_FragCoord.xy - uField.xy) / uField.z;
  vec3 v;
  if (uLook.z > .5) { float s = .25 * dot(p, p); v = vec3(p, 1. - s) / (1. + s); }
  else v = normalize(vec3(p, 1.));
  return v * uHorizonFromView;
}
`;
const SKY = `
uniform vec2 uSun;
uniform vec2 uScale;
uniform vec3 uHigh;
uniform vec3 uPale;
uniform vec3 uWarm;
void main() {
  vec3 h = horizonDir();
  float altitude = asin(clamp(h.z, 0., 1.));
  // exp(-(angle / scale)^2), the angle's square by 2 (1 - cos).
  float warm = exp((dot(h.xy, uSun) - 1.) * uScale.y);
  vec3 light = uHigh + uPale * exp(-altitude * uScale.x) + uWarm * warm;
  outColour = vec4(mix(uTable, light, through(distance(gl_FragCoord.xy, uField.xy))) + dither() * step(1e-4, light), 1.);
}`;
const GROUND = `
uniform sampler2D uSkyline;
uniform vec3 uNear;
uniform vec3 uFar;
uniform vec3 uWindow;
vec2 heightsAt(int i, int row) {
  vec4 t = texelFetch(uSkyline, ivec2(i & ${SKYLINE_SAMPLES - 1}, row), 0) * 255.;
  return (t.xz * 256. + t.yw) * (${(SKYLINE_TOP_DEG * DEG).toFixed(6)} / 65535.);
}
void main() {
  vec3 h = horizonDir();
  if (h.z > ${Math.sin(HIGHEST_DEG * DEG).toFixed(4)}) discard;
  float altitude = asin(clamp(h.z, -1., 1.));
  float turn = atan(-h.y, h.x) * ${(SKYLINE_SAMPLES / (2 * Math.PI)).toFixed(4)};
  float at = floor(turn);
  int i = int(at);
  vec2 solid = mix(heightsAt(i, 0), heightsAt(i + 1, 0), turn - at);
  vec2 crown = mix(heightsAt(i, 1), heightsAt(i + 1, 1), turn - at);
  float px = uField.z;
  vec2 cover = clamp((solid - altitude) * px + .5, 0., 1.);
  vec2 inCrown = clamp(vec2(altitude - crown.x, crown.y - altitude) * px + .5, 0., 1.);
  float near = max(cover.x, crown.y > 0. ? min(inCrown.x, inCrown.y) : 0.);
  float alpha = max(near, cover.y);
  if (alpha <= 0.) discard;
  vec2 pane = vec2(turn * ${(360 / SKYLINE_SAMPLES).toFixed(8)} - ${WINDOW.azimuthDeg.toFixed(2)}, altitude * 57.29578 - ${WINDOW.heightDeg.toFixed(2)});
  vec2 lit = clamp((vec2(${WINDOW.halfWidthDeg}, ${WINDOW.halfHeightDeg}) - abs(pane)) * .0174533 * px + .5, 0., 1.);
  vec3 colour = mix(mix(uFar, uNear, near), uWindow, lit.x * lit.y);
  outColour = vec4(mix(uTable, colour, through(distance(gl_FragCoord.xy, uField.xy))) * alpha, alpha);
}`;

const skylineTexture = (): BufferImageSource =>
  new BufferImageSource({
    resource: skylineTexels(),
    width: SKYLINE_SAMPLES,
    height: SKYLINE_ROWS,
    format: "rgba8unorm",
    alphaMode: "no-premultiply-alpha",
    scaleMode: "nearest",
    addressMode: "clamp-to-edge",
  });

export const createHorizonLayer = (frame: Frame, geometry: Geometry): HorizonLayer => {
  const stops = createRingStops();
  const colour = () => ({ value: new Float32Array(3), type: "vec3<f32>" as const });
  const group = new UniformGroup({
    uHorizonFromView: { value: new Float32Array(9), type: "mat3x3<f32>" },
    uSun: { value: new Float32Array(2), type: "vec2<f32>" },
    uScale: { value: new Float32Array(2), type: "vec2<f32>" },
    uHigh: colour(),
    uPale: colour(),
    uWarm: colour(),
    uNear: colour(),
    uFar: colour(),
    uWindow: colour(),
    uTable: colour(),
  });
  const shared = { frame: frame.group, stops: stops.group, horizon: group };
  const sky = new Shader({
    glProgram: programOf("sky", VERTEX, [FRAME, THROUGH, DITHER, LOOK_AT, SKY]),
    resources: shared,
  });
  const ground = new Shader({
    glProgram: programOf("ground", VERTEX, [FRAME, THROUGH, LOOK_AT, GROUND]),
    resources: { ...shared, uSkyline: skylineTexture() },
  });
  return {
    stops,
    uniforms: group.uniforms as unknown as Uniforms,
    twilight: createTwilight(),
    sky: drawCall(geometry, sky, "opaque", "triangle-list"),
    ground: drawCall(geometry, ground, "over", "triangle-list"),
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
const setColour = (from: ArrayLike<number>, view: FieldView, out: RgbOut): void => {
  surfaceColour(from[0]!, from[1]!, from[2]!, view, out);
};

const drawOver = (renderer: WebGLRenderer, call: DrawCall, frame: Frame): void => {
  call.start = stripStart(0);
  call.size = stripsSize(1);
  issue(renderer, call);
  if (frame.spillPx <= 0) return;
  call.start = stripStart(2);
  issue(renderer, call);
};

/** Draws the open sky; `drawGround` afterwards covers what stands in front of the stars. */
export const drawOpenSky = (
  renderer: WebGLRenderer,
  layer: HorizonLayer,
  frame: Frame,
  view: FieldView,
  horizon: FieldHorizon,
): void => {
  const { uniforms: u, twilight, stops } = layer;
  twilightOf(twilight, view.skyRgb, horizon);
  writeHorizonFromView(horizon, view, u.uHorizonFromView);
  u.uSun[0] = Math.cos(horizon.sunAzimuthRad);
  u.uSun[1] = -Math.sin(horizon.sunAzimuthRad);
  u.uScale[0] = 1 / twilight.paleRad;
  u.uScale[1] = 2 / twilight.warmRad ** 2;
  setColour(twilight.high, view, u.uHigh);
  setColour(twilight.pale, view, u.uPale);
  setColour(twilight.warm, view, u.uWarm);
  setColour(twilight.near, view, u.uNear);
  setColour(twilight.far, view, u.uFar);
  setColour(LIT_WINDOW, view, u.uWindow);
  tokenColour(TABLE, view, u.uTable);
  stops.count = 0;
  addStop(stops, 0, u.uTable);
  addStop(stops, frame.stopPx, u.uTable);
  addStop(stops, frame.rimOuterPx - 1, u.uTable);
  addStop(stops, frame.rimOuterPx + frame.spillPx, u.uTable);
  drawOver(renderer, layer.sky, frame);
};
export const drawGround = (renderer: WebGLRenderer, layer: HorizonLayer, frame: Frame): void =>
  drawOver(renderer, layer.ground, frame);
