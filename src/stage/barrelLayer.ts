/** The instrument's sky with its soft stop, and the barrel's rim around it. */
import { type Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import { DISC_SIZE, DISC_VERTEX } from "./disc.ts";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { HAIR, RIM_EDGE, RIM_LIT, RIM_MID, surfaceColour, TABLE, type Token, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import {
  addStop,
  COARSE,
  createRingShader,
  createRingStops,
  createSoftRingShader,
  FINE,
  type RingStops,
  stripsSize,
} from "./rings.ts";
import type { FieldView, StageLayout } from "./view.ts";

export interface BarrelLayer {
  readonly sky: DrawCall;
  readonly edge: DrawCall;
  readonly rim: DrawCall;
  /** Holds every channel under the lamp's ceiling, however many lights have added up. */
  readonly ceiling: DrawCall;
  readonly skyStops: RingStops;
  readonly edgeStops: RingStops;
  readonly rimStops: RingStops;
  readonly ceilingUniforms: { uDiscPx: number };
}
/** Darkening towards the stop: share of the radius, share of the light. */
const SHADE_AT = 0.82;
const SHADE = 0.9;
const STOP_SHADE = 0.74;
/** Share of the table at the very stop. */
const STOP_COVER = 0.95;
const CEILING_FRAGMENT = "void main() { outColour = vec4(uLamp.rgb, 1.); }";

/** @param fine - rings that show their edge, @param coarse - rings that do not */
export const createBarrelLayer = (frame: Frame, fine: Geometry, coarse: Geometry, disc: Geometry): BarrelLayer => {
  const [skyStops, edgeStops, rimStops] = [createRingStops(), createRingStops(), createRingStops()];
  const group = new UniformGroup({ uDiscPx: { value: 0, type: "f32" } });
  const ceiling = new Shader({
    glProgram: programOf("ceiling", [FRAME, PROJECT, DISC_VERTEX], [FRAME, CEILING_FRAGMENT]),
    resources: { frame: frame.group, disc: group },
  });
  return {
    skyStops,
    edgeStops,
    rimStops,
    ceilingUniforms: group.uniforms,
    sky: drawCall(coarse, createSoftRingShader(frame.group, skyStops), "opaque", "triangle-list"),
    edge: drawCall(fine, createRingShader(frame.group, edgeStops), "opaque", "triangle-list"),
    rim: drawCall(fine, createRingShader(frame.group, rimStops), "opaque", "triangle-list"),
    ceiling: drawCall(disc, ceiling, "min", "triangle-list"),
  };
};

const colour = new Float32Array(3);
const table = new Float32Array(3);

/** Adds the sky as it is at one radius, as far as the stop lets it through there, to stand at another. */
const addSky = (
  stops: RingStops,
  radiusPx: number,
  atPx: number,
  seen: number,
  frame: Frame,
  view: FieldView,
): void => {
  const share = atPx / frame.stopPx;
  const shade =
    share < SHADE_AT
      ? 1 + ((SHADE - 1) * share) / SHADE_AT
      : SHADE + ((STOP_SHADE - SHADE) * (share - SHADE_AT)) / (1 - SHADE_AT);
  const sky = view.skyRgb;
  surfaceColour(sky[0] * shade, sky[1] * shade, sky[2] * shade, view, colour);
  for (let c = 0; c < 3; c++) colour[c] = table[c]! + (colour[c]! - table[c]!) * seen * view.light;
  addStop(stops, radiusPx, colour);
};

/** Draws the sky of an instrument: full at the centre, shaded to the stop, let out over the soft edge. */
export const drawSky = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  const { skyStops, edgeStops } = layer;
  tokenColour(TABLE, view, table);
  const softFrom = frame.stopPx - frame.softPx;
  const bend = Math.min(SHADE_AT * frame.stopPx, softFrom - 1);
  skyStops.count = 0;
  addSky(skyStops, 0, 0, 1, frame, view);
  addSky(skyStops, bend, bend, 1, frame, view);
  // The coarse polygon reaches a little under the fine edge, which is drawn over it.
  addSky(skyStops, softFrom / Math.cos(Math.PI / COARSE), softFrom, 1, frame, view);
  layer.sky.size = stripsSize(2, COARSE);
  issue(renderer, layer.sky);
  edgeStops.count = 0;
  addSky(edgeStops, softFrom, softFrom, 1, frame, view);
  addSky(edgeStops, frame.stopPx, frame.stopPx, 1 - STOP_COVER, frame, view);
  layer.edge.size = stripsSize(1, FINE);
  issue(renderer, layer.edge);
};

const addToken = (stops: RingStops, radiusPx: number, one: Token, view: FieldView): void => {
  tokenColour(one, view, colour);
  addStop(stops, radiusPx, colour);
};

/** Draws the rim from the field's stop outwards; it covers whatever light lies there. */
export const drawRim = (
  renderer: WebGLRenderer,
  layer: BarrelLayer,
  frame: Frame,
  view: FieldView,
  layout: StageLayout,
): void => {
  const stops = layer.rimStops;
  const px = frame.pxPerCssPx;
  const inner = layout.fieldRadiusCssPx * px;
  const width = layout.rimCssPx * px;
  const from = Math.max(inner, frame.stopPx);
  tokenColour(TABLE, view, table);
  stops.count = 0;
  addStop(stops, from, table);
  addToken(stops, from + 0.9 * px, HAIR, view);
  addToken(stops, from + 1.8 * px, RIM_LIT, view);
  addToken(stops, inner + 0.34 * width, RIM_MID, view);
  addToken(stops, inner + width - 0.9 * px, RIM_EDGE, view);
  addToken(stops, inner + width, HAIR, view);
  addStop(stops, inner + width + 0.9 * px, table);
  layer.rim.size = layout.rimCssPx > 0 ? stripsSize(stops.count - 1, FINE) : 0;
  issue(renderer, layer.rim);
};

/** Under a lamp: no channel over its ceiling, inside the field and on the reticle alike. */
export const drawCeiling = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  if (view.lamp === "normal") return;
  layer.ceilingUniforms.uDiscPx = (frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx) + 1;
  layer.ceiling.size = DISC_SIZE;
  issue(renderer, layer.ceiling);
};
