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
 * less of it. The middle is one tone, cleared as a square that holds it and stays within the stop: no pixel is worked out.
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
/** What the canvas is cleared to: the table, but where it holds nothing but a field, that one's middle. */
export const groundColour = (frame: Frame, view: FieldView, fieldAlone: boolean, out: RgbOut): void => {
  if (fieldAlone && !view.horizon) skyColour(0, 1, frame, view, out);
  else tokenColour(TABLE, view, out);
};
/** Clears the middle of an instrument's field, a square about its centre, on a canvas that is cleared to the table. */
const clearMiddle = ({ gl }: WebGLRenderer, frame: Frame, view: FieldView): void => {
  skyColour(0, 1, frame, view, colour);
  tokenColour(TABLE, view, table);
  const half = WHOLE_TO * frame.stopPx;
  const [left, low] = [Math.round(frame.leftPx - half), Math.round(frame.downPx - half)];
  const size = Math.round(2 * half);
  gl.enable(gl.SCISSOR_TEST);
  gl.scissor(left, low, size, size);
  gl.clearColor(colour[0]!, colour[1]!, colour[2]!, 1);
  gl.clear(gl.COLOR_BUFFER_BIT);
  gl.disable(gl.SCISSOR_TEST);
  // Pixi keeps in mind what it clears to, and sets it no second time.
  gl.clearColor(table[0]!, table[1]!, table[2]!, 1);
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

/** Draws the sky of an instrument: its middle where the canvas is not cleared to it, then from where it darkens to its soft edge. */
export const drawSky = (
  renderer: WebGLRenderer,
  layer: BarrelLayer,
  frame: Frame,
  view: FieldView,
  fieldAlone: boolean,
): void => {
  if (!fieldAlone) clearMiddle(renderer, frame, view);
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
