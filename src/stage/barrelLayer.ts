/** The instrument's sky with its soft stop, and the ceiling of the lamps. */
import { type Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import { DISC_SIZE, DISC_VERTEX } from "./disc.ts";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { type RgbOut, surfaceColour, TABLE, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import {
  addStop,
  type Band,
  COARSE,
  createBandGeometry,
  createRingStops,
  createSoftRingShader,
  FINE,
  type RingStops,
} from "./rings.ts";
import type { FieldView } from "./view.ts";

export interface BarrelLayer {
  readonly sky: DrawCall;
  /** Holds every channel under the lamp's ceiling, however many lights have added up. */
  readonly ceiling: DrawCall;
  readonly skyStops: RingStops;
  readonly ceilingUniforms: { uDiscPx: number };
}
/**
 * Darkening towards the stop, share of the radius and share of the light: a middle that the whole objective lights, then
 * less of it. The middle is one tone, to which the canvas is cleared: no pixel of it is worked out.
 */
const WHOLE_TO = 0.7;
const SHADE_AT = 0.82;
const SHADE = 0.9;
const STOP_SHADE = 0.74;
/** Share of the table at the very stop. */
const STOP_COVER = 0.95;
/** Slow shades are cut coarsely and lie lowest; over them go, finely cut, what shows an edge. */
const SKY_BANDS: readonly Band[] = [
  { from: 0, to: 2, segments: COARSE },
  { from: 3, to: 4, segments: FINE },
];
const CEILING_FRAGMENT = "void main() { outColour = vec4(uLamp.rgb, 1.); }";

export const createBarrelLayer = (frame: Frame, disc: Geometry): BarrelLayer => {
  const skyStops = createRingStops();
  const skyRings = createBandGeometry(SKY_BANDS);
  const sky = drawCall(skyRings, createSoftRingShader(frame.group, skyStops), "opaque", "triangle-list");
  sky.size = skyRings.indexBuffer.data.length;
  const group = new UniformGroup({ uDiscPx: { value: 0, type: "f32" } });
  const ceiling = new Shader({
    glProgram: programOf("ceiling", [FRAME, PROJECT, DISC_VERTEX], [FRAME, CEILING_FRAGMENT]),
    resources: { frame: frame.group, disc: group },
  });
  return {
    skyStops,
    sky,
    ceilingUniforms: group.uniforms,
    ceiling: drawCall(disc, ceiling, "min", "triangle-list"),
  };
};

const colour = new Float32Array(3);
const table = new Float32Array(3);

/** Share of the light so far out, as a share of the stop's radius. */
const shadeAt = (share: number): number => {
  if (share <= WHOLE_TO) return 1;
  if (share < SHADE_AT) return 1 + ((SHADE - 1) * (share - WHOLE_TO)) / (SHADE_AT - WHOLE_TO);
  return SHADE + ((STOP_SHADE - SHADE) * (share - SHADE_AT)) / (1 - SHADE_AT);
};
/** The sky as it is at one radius, as far as the stop lets it through there. */
const skyColour = (atPx: number, seen: number, frame: Frame, view: FieldView, out: RgbOut): void => {
  const shade = shadeAt(atPx / frame.stopPx);
  const sky = view.skyRgb;
  tokenColour(TABLE, view, table);
  surfaceColour(sky[0] * shade, sky[1] * shade, sky[2] * shade, view, out);
  for (let c = 0; c < 3; c++) out[c] = table[c]! + (out[c]! - table[c]!) * seen * view.light;
};
/** What the canvas is cleared to: the middle of an instrument's field, or the table where an open sky is drawn over it. */
export const groundColour = (frame: Frame, view: FieldView, out: RgbOut): void => {
  if (view.horizon) tokenColour(TABLE, view, out);
  else skyColour(0, 1, frame, view, out);
};
const addSky = (
  stops: RingStops,
  radiusPx: number,
  atPx: number,
  seen: number,
  frame: Frame,
  view: FieldView,
): void => {
  skyColour(atPx, seen, frame, view, colour);
  addStop(stops, radiusPx, colour);
};

/** Draws the sky of an instrument from where it darkens, over a canvas cleared to its middle's tone; let out over the soft edge. */
export const drawSky = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  const { skyStops } = layer;
  const softFrom = frame.stopPx - frame.softPx;
  const whole = WHOLE_TO * frame.stopPx;
  const bend = Math.max(whole + 1, Math.min(SHADE_AT * frame.stopPx, softFrom - 1));
  skyStops.count = 0;
  addSky(skyStops, whole, whole, 1, frame, view);
  addSky(skyStops, bend, bend, 1, frame, view);
  // The coarse polygon reaches a little under the fine edge, which is drawn over it.
  addSky(skyStops, softFrom / Math.cos(Math.PI / COARSE), softFrom, 1, frame, view);
  addSky(skyStops, softFrom, softFrom, 1, frame, view);
  addSky(skyStops, frame.stopPx, frame.stopPx, 1 - STOP_COVER, frame, view);
  issue(renderer, layer.sky);
};

/** Under a lamp: no channel over its ceiling, inside the field and on the reticle alike. */
export const drawCeiling = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  if (view.lamp === "normal") return;
  layer.ceilingUniforms.uDiscPx = (frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx) + 1;
  layer.ceiling.size = DISC_SIZE;
  issue(renderer, layer.ceiling);
};
