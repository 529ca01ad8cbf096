/** The reticle (rings of light, a hair cross) and the thin lines that join stars for a moment. */
import { Buffer, BufferUsage, Geometry, Shader, type WebGLRenderer } from "pixi.js";
import { gnomonic, stereographic } from "#core/celestial/projection.ts";
import type { Dir } from "#core/seams/index.ts";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf, THROUGH } from "./glsl.ts";
import { HAND, RING_LIGHT, tokenColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { addStop, createRingShader, createRingStops, FINE, type RingStops, stripsSize } from "./rings.ts";
import type { FieldView, StageLayout } from "./view.ts";

const FLOATS = 8;
const MOST_LINES = 64;
const VERTICES_PER_LINE = 6;
const DEG = Math.PI / 180;
/** The sight's rings, full width; the inner one never looks smaller than this. */
const INNER_RING_RAD = 1 * DEG;
const OUTER_RING_RAD = 3 * DEG;
const LEAST_INNER_CSS_PX = 13;
/** Hairs leave the middle free for the star, in shares of the field's radius. */
const CROSS_GAP = 0.045;
const CROSS_ALPHA = 0.8;
const BLACK = new Float32Array(3);

export interface LineLayer {
  readonly lines: DrawCall;
  readonly buffer: Buffer;
  readonly data: Float32Array;
  readonly rings: DrawCall;
  readonly stops: RingStops;
}

const VERTEX = `
in vec2 aWindow;
in vec2 aAcross;
in vec4 aColour;
out vec2 vAcross;
out vec4 vColour;
void main() { vAcross = aAcross; vColour = aColour; gl_Position = clipOf(aWindow); }`;
const FRAGMENT = `
in vec2 vAcross;
in vec4 vColour;
void main() {
  outColour = vColour * (clamp(vAcross.y + .5 - abs(vAcross.x), 0., 1.) * through(distance(gl_FragCoord.xy, uField.xy)));
}`;

export const createLineLayer = (frame: Frame, ringGeometry: Geometry): LineLayer => {
  const data = new Float32Array(MOST_LINES * VERTICES_PER_LINE * FLOATS);
  const buffer = new Buffer({ data, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
  const stride = FLOATS * 4;
  const geometry = new Geometry({
    attributes: {
      aWindow: { buffer, format: "float32x2", stride, offset: 0 },
      aAcross: { buffer, format: "float32x2", stride, offset: 8 },
      aColour: { buffer, format: "float32x4", stride, offset: 16 },
    },
  });
  const glProgram = programOf("lines", [FRAME, PROJECT, VERTEX], [FRAME, THROUGH, FRAGMENT]);
  const stops = createRingStops();
  return {
    data,
    buffer,
    stops,
    lines: drawCall(geometry, new Shader({ glProgram, resources: { frame: frame.group } }), "over", "triangle-list"),
    rings: drawCall(ringGeometry, createRingShader(frame.group, stops), "over", "triangle-list"),
  };
};

const colour = new Float32Array(3);
const from = new Float64Array(2);
const to = new Float64Array(2);

/** Where a direction stands on the canvas, device px from its lower left corner; false where it is off the map. */
const windowOf = (dir: Dir, frame: Frame, view: FieldView, layout: StageLayout, out: Float64Array): boolean => {
  const m = view.viewFromIcrs;
  const along = (row: number) => m[row * 3]! * dir[0] + m[row * 3 + 1]! * dir[1] + m[row * 3 + 2]! * dir[2];
  const map = view.projection === "stereographic" ? stereographic : gnomonic;
  if (!map.project(along(0), along(1), along(2), out)) return false;
  const scale = (layout.fieldRadiusCssPx * frame.pxPerCssPx) / view.planeRadius;
  out[0] = frame.leftPx + out[0]! * scale;
  out[1] = frame.downPx + out[1]! * scale;
  return true;
};

/** Adds one straight line to those that the next draw shows; more than there is room for are left out. */
const putLine = (
  layer: LineLayer,
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  widthPx: number,
  alpha: number,
): void => {
  if (layer.lines.size >= MOST_LINES * VERTICES_PER_LINE) return;
  const ax = a[0]!;
  const ay = a[1]!;
  const bx = b[0]!;
  const by = b[1]!;
  const length = Math.sqrt((bx - ax) ** 2 + (by - ay) ** 2);
  if (length === 0) return;
  const half = widthPx / 2;
  const reach = half + 1;
  const acrossX = (-(by - ay) / length) * reach;
  const acrossY = ((bx - ax) / length) * reach;
  let at = layer.lines.size * FLOATS;
  for (let corner = 0; corner < VERTICES_PER_LINE; corner++) {
    const end = corner === 1 || corner === 3 || corner === 4 ? 1 : 0;
    const side = corner === 2 || corner === 4 || corner === 5 ? 1 : -1;
    layer.data[at] = (end ? bx : ax) + side * acrossX;
    layer.data[at + 1] = (end ? by : ay) + side * acrossY;
    layer.data[at + 2] = side * reach;
    layer.data[at + 3] = half;
    for (let c = 0; c < 3; c++) layer.data[at + 4 + c] = colour[c]! * alpha;
    layer.data[at + 7] = alpha;
    at += FLOATS;
  }
  layer.lines.size += VERTICES_PER_LINE;
};

const putCross = (layer: LineLayer, frame: Frame): void => {
  const { leftPx, downPx } = frame;
  const gap = CROSS_GAP * frame.stopPx;
  colour.set(BLACK);
  for (let arm = 0; arm < 4; arm++) {
    const x = arm === 0 ? 1 : arm === 1 ? -1 : 0;
    const y = arm === 2 ? 1 : arm === 3 ? -1 : 0;
    from[0] = leftPx + x * gap;
    from[1] = downPx + y * gap;
    to[0] = leftPx + x * frame.stopPx;
    to[1] = downPx + y * frame.stopPx;
    putLine(layer, from, to, 1.2 * frame.pxPerCssPx, CROSS_ALPHA);
  }
};

const drawRings = (
  renderer: WebGLRenderer,
  layer: LineLayer,
  frame: Frame,
  view: FieldView,
  layout: StageLayout,
): void => {
  const { stops, rings } = layer;
  const px = frame.pxPerCssPx;
  // Full width w shows as a circle of half of it; close to the centre both projections agree to far below a pixel.
  const scale = (layout.fieldRadiusCssPx * px) / view.planeRadius;
  const inner = Math.max((LEAST_INNER_CSS_PX / 2) * px, scale * Math.tan(INNER_RING_RAD / 2));
  const outer = Math.max(inner + 6 * px, scale * Math.tan(OUTER_RING_RAD / 2));
  tokenColour(RING_LIGHT, view, colour);
  stops.count = 0;
  for (const radius of [inner, outer]) {
    addStop(stops, radius - 1.2 * px, colour, 0);
    addStop(stops, radius - 0.2 * px, colour, view.light);
    addStop(stops, radius + 0.2 * px, colour, view.light);
    addStop(stops, radius + 1.2 * px, colour, 0);
  }
  rings.size = stripsSize(stops.count - 1, FINE);
  issue(renderer, rings);
};

/** Draws reticle and lines over the stars. */
export const drawMarks = (
  renderer: WebGLRenderer,
  layer: LineLayer,
  frame: Frame,
  view: FieldView,
  layout: StageLayout,
): void => {
  layer.lines.size = 0;
  if (view.reticle === "cross") putCross(layer, frame);
  if (view.linesAlpha > 0) {
    tokenColour(HAND, view, colour);
    for (const line of view.lines) {
      if (!windowOf(line.from, frame, view, layout, from) || !windowOf(line.to, frame, view, layout, to)) continue;
      putLine(layer, from, to, 1.4 * frame.pxPerCssPx, view.linesAlpha);
    }
  }
  if (layer.lines.size > 0) layer.buffer.update(layer.lines.size * FLOATS * 4);
  issue(renderer, layer.lines);
  if (view.reticle === "rings") drawRings(renderer, layer, frame, view, layout);
};
