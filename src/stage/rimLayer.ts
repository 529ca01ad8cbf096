/** The barrel's rim around the field, and the table beyond it. */
import type { WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { HAIR, RIM_EDGE, RIM_LIT, RIM_MID, TABLE, type Token, tokenColour } from "./palette.ts";
import { isFieldAlone } from "./reach.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import {
  addStop,
  type Band,
  createBandGeometry,
  createPlainRingShader,
  createRingStops,
  FINE,
  NET,
  type RingStops,
  ringIndices,
} from "./rings.ts";
import type { FieldView, StageLayout } from "./view.ts";

/** The layout, and by device px the field's radius, where the rim begins, its width, where the table begins. */
interface Edge {
  layout: StageLayout | null;
  innerPx: number;
  fromPx: number;
  widthPx: number;
  tableFromPx: number;
}
export interface RimLayer {
  readonly rim: DrawCall;
  readonly stops: RingStops;
  readonly edge: Edge;
}
/** The table beyond; the rim's shade; its inner and its outer hair. */
const RIM_BANDS: readonly Band[] = [
  { from: 0, to: 1, segments: FINE },
  { from: 2, to: 4, segments: NET },
  { from: 5, to: 7, segments: FINE },
  { from: 8, to: 10, segments: FINE },
];
const FIRST_OF_RIM = 2;
/** The strips that a canvas shows which holds little more than the field: the shade next to the inner hair, and that hair. */
const AT_FIELD: ReadonlySet<number> = new Set([2, 5, 6]);

export const createRimLayer = (frame: Frame): RimLayer => {
  const stops = createRingStops();
  const shader = createPlainRingShader(frame.group, stops);
  return {
    rim: drawCall(createBandGeometry(RIM_BANDS), shader, "opaque", "triangle-list"),
    stops,
    edge: { layout: null, innerPx: 0, fromPx: 0, widthPx: 0, tableFromPx: 0 },
  };
};

const colour = new Float32Array(3);
const table = new Float32Array(3);
const addToken = (stops: RingStops, radiusPx: number, one: Token, view: FieldView): void => {
  tokenColour(one, view, colour);
  addStop(stops, radiusPx, colour);
};

/** Leaves out what of the rim lies outside the canvas, and all of it where there is none. */
const cutRim = (
  { rim, stops, edge }: RimLayer,
  { leftPx, rightPx, upPx, downPx }: Frame,
  fieldAlone: boolean,
): void => {
  const seen = (stop: number, turn: number) => {
    if (fieldAlone && !AT_FIELD.has(stop)) return false;
    if (stop >= FIRST_OF_RIM && edge.widthPx <= 0) return false;
    const x = stops.radii[stop]! * Math.cos(2 * Math.PI * turn);
    const y = stops.radii[stop]! * Math.sin(2 * Math.PI * turn);
    return x > -leftPx && x < rightPx && y > -downPx && y < upPx;
  };
  const indices = ringIndices(RIM_BANDS, seen);
  rim.geometry.indexBuffer.data = indices;
  rim.size = indices.length;
};
/** The circles of `RIM_BANDS`. */
const setRim = (stops: RingStops, edge: Edge, px: number, view: FieldView) => {
  const { innerPx, fromPx, widthPx, tableFromPx } = edge;
  const outer = innerPx + widthPx;
  tokenColour(TABLE, view, table);
  stops.count = 0;
  addStop(stops, tableFromPx, table);
  addStop(stops, tableFromPx + 4 * outer, table);
  addToken(stops, fromPx + 1.8 * px, RIM_LIT, view);
  addToken(stops, innerPx + 0.34 * widthPx, RIM_MID, view);
  // The coarse polygon reaches a little under the fine hair, which is drawn over it.
  addToken(stops, (outer - 0.9 * px) / Math.cos(Math.PI / NET), RIM_EDGE, view);
  addStop(stops, fromPx, table);
  addToken(stops, fromPx + 0.9 * px, HAIR, view);
  addToken(stops, fromPx + 1.8 * px, RIM_LIT, view);
  addToken(stops, outer - 0.9 * px, RIM_EDGE, view);
  addToken(stops, outer, HAIR, view);
  addStop(stops, outer + 0.9 * px, table);
};

/** Draws the rim from the field's stop outwards, and the table beyond; it covers whatever light lies there. */
export const drawRim = (
  renderer: WebGLRenderer,
  layer: RimLayer,
  frame: Frame,
  view: FieldView,
  layout: StageLayout,
): void => {
  const { edge, stops } = layer;
  const px = frame.pxPerCssPx;
  const inner = layout.fieldRadiusCssPx * px;
  const width = layout.rimCssPx * px;
  const from = Math.max(inner, frame.stopPx);
  const tableFrom = frame.spillPx > 0 ? 2 * frame.farPx : width > 0 ? inner + width + 0.9 * px : from;
  const same = edge.layout === layout && edge.fromPx === from && edge.tableFromPx === tableFrom;
  edge.layout = layout;
  edge.innerPx = inner;
  edge.fromPx = from;
  edge.widthPx = width;
  edge.tableFromPx = tableFrom;
  setRim(stops, edge, px, view);
  if (!same) cutRim(layer, frame, isFieldAlone(layout));
  issue(renderer, layer.rim);
};
