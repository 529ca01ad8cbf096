/**
 * The ground before the stars: solid below the hedges, drawn from the skyline's texture above. Stars are drawn where they
 * truly stand, and the tube is told so too; so the ground stands where the light from just over it comes from, lower by
 * refraction: what shows over the hedge is what an eye sees there.
 */
import { Buffer, BufferImageSource, BufferUsage, Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import { bennettDeg } from "#core/celestial/refraction.ts";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { type OpenSkyLayer, setSurface } from "./openSky.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { SKYLINE_ROWS, SKYLINE_SAMPLES, SKYLINE_TOP_DEG, skylineTexels, WINDOW } from "./skyline.ts";
import type { FieldView, Rgb } from "./view.ts";

const DEG = Math.PI / 180;
const LIT_WINDOW: Rgb = [0.91, 0.66, 0.27];
/** Rows of the net: from above all roofs and crowns to below all hedges, and on down to the feet. */
const BAND_DEG = [9.2, 6.5, 4.6, 3.2, 2.2, 1.2];
const SOLID_DEG = [1.2, -4, -12, -25, -45, -89];
/** The net lies this far to both sides of where one looks, in steps on fixed azimuths. */
const STEP_DEG = 2.5;
const STEPS = 40;

type Uniforms = { uFaceDeg: number } & Record<"uNear" | "uFar" | "uWindow", Float32Array>;
export interface GroundLayer {
  readonly band: DrawCall;
  readonly solid: DrawCall;
  readonly uniforms: Uniforms;
}

const VERTEX = `
in vec3 aPlace;
uniform mat3 uHorizonFromView;
uniform float uFaceDeg;
out vec2 vPlace;
void main() {
  float azimuth = radians(uFaceDeg + aPlace.x);
  float altitude = radians(aPlace.z);
  vec3 v = uHorizonFromView * vec3(cos(altitude) * vec2(cos(azimuth), -sin(azimuth)), sin(altitude));
  vPlace = vec2((uFaceDeg + aPlace.x) * ${(SKYLINE_SAMPLES / 360).toFixed(8)}, radians(aPlace.y));
  gl_Position = clipOf(windowOf(v));
}`;
const BAND_FRAGMENT = `
in vec2 vPlace;
uniform sampler2D uSkyline;
uniform vec3 uNear;
uniform vec3 uFar;
uniform vec3 uWindow;
vec2 heightsAt(int i, int row) {
  vec4 t = texelFetch(uSkyline, ivec2(i & ${SKYLINE_SAMPLES - 1}, row), 0);
  return (t.xz * 256. + t.yw) * ${((255 * SKYLINE_TOP_DEG * DEG) / 65535).toFixed(9)};
}
void main() {
  float altitude = vPlace.y;
  float px = uField.z;
  int i = int(floor(vPlace.x));
  float part = fract(vPlace.x);
  vec2 solid = mix(heightsAt(i, 0), heightsAt(i + 1, 0), part);
  vec2 crown = mix(heightsAt(i, 1), heightsAt(i + 1, 1), part);
  vec2 cover = clamp((solid - altitude) * px + .5, 0., 1.);
  vec2 inCrown = clamp(vec2(altitude - crown.x, crown.y - altitude) * px + .5, 0., 1.);
  float near = max(cover.x, min(step(1e-6, crown.y), min(inCrown.x, inCrown.y)));
  float alpha = max(near, cover.y);
  float turn = mod(vPlace.x, ${SKYLINE_SAMPLES}.) * ${(360 / SKYLINE_SAMPLES).toFixed(8)};
  vec2 pane = abs(vec2(turn, degrees(altitude)) - vec2(${WINDOW.azimuthDeg}, ${WINDOW.heightDeg}));
  vec2 lit = clamp((vec2(${WINDOW.halfWidthDeg}, ${WINDOW.halfHeightDeg}) - pane) * .0174533 * px + .5, 0., 1.);
  outColour = vec4(mix(mix(uFar, uNear, near), uWindow, lit.x * lit.y) * alpha, alpha);
}`;
const SOLID_FRAGMENT = "uniform vec3 uNear; void main() { outColour = vec4(uNear, 1.); }";

const netOf = (rowsDeg: readonly number[]): Geometry => {
  const columns = 2 * STEPS + 1;
  // Azimuth; height as it looks; height in truth.
  const places = rowsDeg.flatMap((row) =>
    Array.from({ length: columns }, (_, i) => [(i - STEPS) * STEP_DEG, row, row - bennettDeg(row)]),
  );
  const order: number[] = [];
  for (let row = 0; row + 1 < rowsDeg.length; row++) {
    for (let i = 0; i + 1 < columns; i++) {
      const corner = row * columns + i;
      order.push(corner, corner + columns, corner + 1, corner + 1, corner + columns, corner + columns + 1);
    }
  }
  const data = Float32Array.from(places.flat());
  return new Geometry({
    attributes: {
      aPlace: { buffer: new Buffer({ data, usage: BufferUsage.VERTEX | BufferUsage.STATIC }), format: "float32x3" },
    },
    indexBuffer: new Buffer({ data: Uint16Array.from(order), usage: BufferUsage.INDEX | BufferUsage.STATIC }),
  });
};
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

export const createGroundLayer = (frame: Frame, sky: OpenSkyLayer): GroundLayer => {
  const colour = () => ({ value: new Float32Array(3), type: "vec3<f32>" as const });
  const group = new UniformGroup({
    uFaceDeg: { value: 0, type: "f32" },
    uNear: colour(),
    uFar: colour(),
    uWindow: colour(),
  });
  const resources = { frame: frame.group, horizon: sky.group, ground: group };
  const vertex = [FRAME, PROJECT, VERTEX];
  const band = new Shader({
    glProgram: programOf("skyline", vertex, [FRAME, BAND_FRAGMENT]),
    resources: { ...resources, uSkyline: skylineTexture() },
  });
  const solid = new Shader({ glProgram: programOf("ground", vertex, [SOLID_FRAGMENT]), resources });
  const call = (rowsDeg: readonly number[], shader: Shader, kind: "over" | "opaque") => ({
    ...drawCall(netOf(rowsDeg), shader, kind, "triangle-list"),
    size: (rowsDeg.length - 1) * 2 * STEPS * 6,
  });
  return {
    uniforms: group.uniforms as unknown as Uniforms,
    band: call(BAND_DEG, band, "over"),
    solid: call(SOLID_DEG, solid, "opaque"),
  };
};

/** Draws the ground if any of it is in view; the sky must have been drawn before, in the same frame. */
export const drawGround = (
  renderer: WebGLRenderer,
  layer: GroundLayer,
  sky: OpenSkyLayer,
  frame: Frame,
  view: FieldView,
): void => {
  const forward = sky.uniforms.uHorizonFromView;
  const altitudeRad = Math.asin(Math.min(1, Math.max(-1, forward[8]!)));
  const reachPx = frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx;
  if (altitudeRad - 2 * Math.atan(reachPx / frame.pxPerPlane / 2) > BAND_DEG[0]! * DEG) return;
  const { uniforms: u } = layer;
  u.uFaceDeg = STEP_DEG * Math.round(Math.atan2(-forward[5]!, forward[2]!) / DEG / STEP_DEG);
  setSurface(sky.twilight.near, view, u.uNear);
  setSurface(sky.twilight.far, view, u.uFar);
  setSurface(LIT_WINDOW, view, u.uWindow);
  issue(renderer, layer.band);
  issue(renderer, layer.solid);
};
