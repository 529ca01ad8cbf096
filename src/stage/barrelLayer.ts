/** The instrument's sky with its soft stop, and the barrel's rim around it. */
import { type Geometry, Shader, type WebGLRenderer } from "pixi.js";
import { type Frame, SOFT_EDGE_CSS_PX } from "./frame.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { HAIR, RIM_EDGE, RIM_LIT, RIM_MID, surfaceColour, TABLE, type Token, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { addStop, createRingShader, createRingStops, RING_VERTEX, type RingStops, stripsSize } from "./rings.ts";
import type { FieldView, StageLayout } from "./view.ts";

export interface BarrelLayer {
  readonly sky: DrawCall;
  readonly rim: DrawCall;
  /** Holds every channel under the lamp's ceiling, however many lights have added up. */
  readonly ceiling: DrawCall;
  readonly skyStops: RingStops;
  readonly rimStops: RingStops;
}
/** Darkening towards the stop: share of the radius, share of the light. */
const SHADE_AT = 0.82;
const SHADE = 0.9;
const STOP_SHADE = 0.74;
/** Of the table, at the very stop. */
const STOP_COVER = 0.95;

export const createBarrelLayer = (frame: Frame, geometry: Geometry): BarrelLayer => {
  const skyStops = createRingStops();
  const rimStops = createRingStops();
  const ceiling = new Shader({
    glProgram: programOf(
      "ceiling",
      [FRAME, PROJECT, RING_VERTEX, "void main() { gl_Position = clipOf(ringWindow()); }"],
      [FRAME, "void main() { outColour = vec4(uLamp.rgb, 1.); }"],
    ),
    resources: { frame: frame.group, stops: skyStops.group },
  });
  return {
    skyStops,
    rimStops,
    sky: drawCall(geometry, createRingShader(frame.group, skyStops), "opaque", "triangle-list"),
    rim: drawCall(geometry, createRingShader(frame.group, rimStops), "opaque", "triangle-list"),
    ceiling: drawCall(geometry, ceiling, "min", "triangle-list"),
  };
};

const colour = new Float32Array(3);
const table = new Float32Array(3);

/** The sky at a radius, as far as the stop lets it through; written into `colour`. */
const skyAt = (radiusPx: number, frame: Frame, view: FieldView): Float32Array => {
  const softPx = SOFT_EDGE_CSS_PX * frame.pxPerCssPx;
  const share = radiusPx / frame.stopPx;
  const shade =
    share < SHADE_AT
      ? 1 + ((SHADE - 1) * share) / SHADE_AT
      : SHADE + ((STOP_SHADE - SHADE) * (share - SHADE_AT)) / (1 - SHADE_AT);
  const seen = (1 - STOP_COVER * Math.max(0, (radiusPx - frame.stopPx + softPx) / softPx)) * view.light;
  const [red, green, blue] = view.skyRgb;
  surfaceColour(red * shade, green * shade, blue * shade, view, colour);
  for (let c = 0; c < 3; c++) colour[c] = table[c]! + (colour[c]! - table[c]!) * seen;
  return colour;
};

/** Draws the sky of an instrument: full at the centre, shaded to the stop, let out over the soft edge. */
export const drawSky = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  const stops = layer.skyStops;
  tokenColour(TABLE, view, table);
  stops.count = 0;
  const softFrom = frame.stopPx - SOFT_EDGE_CSS_PX * frame.pxPerCssPx;
  addStop(stops, 0, skyAt(0, frame, view));
  const shadeAt = SHADE_AT * frame.stopPx;
  addStop(stops, Math.min(shadeAt, softFrom), skyAt(Math.min(shadeAt, softFrom), frame, view));
  addStop(stops, Math.max(shadeAt, softFrom), skyAt(Math.max(shadeAt, softFrom), frame, view));
  addStop(stops, frame.stopPx, skyAt(frame.stopPx, frame, view));
  layer.sky.size = stripsSize(stops.count - 1);
  issue(renderer, layer.sky);
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
  addToken(stops, from + 0.5 * px, HAIR, view);
  addToken(stops, from + 1.5 * px, HAIR, view);
  addToken(stops, from + 2 * px, RIM_LIT, view);
  addToken(stops, inner + 0.34 * width, RIM_MID, view);
  addToken(stops, inner + width - 0.75 * px, RIM_EDGE, view);
  addToken(stops, inner + width - 0.25 * px, HAIR, view);
  addToken(stops, inner + width + 0.25 * px, HAIR, view);
  addStop(stops, inner + width + 0.75 * px, table);
  layer.rim.size = layout.rimCssPx > 0 ? stripsSize(stops.count - 1) : 0;
  issue(renderer, layer.rim);
};

/** Under a lamp: no channel over its ceiling, inside the field and on the reticle alike. */
export const drawCeiling = (renderer: WebGLRenderer, layer: BarrelLayer, frame: Frame, view: FieldView): void => {
  if (view.lamp === "normal") return;
  const stops = layer.skyStops;
  stops.count = 0;
  addStop(stops, 0, table);
  addStop(stops, frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx + 1, table);
  layer.ceiling.size = stripsSize(1);
  issue(renderer, layer.ceiling);
};
