/** Stars as points; those bright enough for glare as quads, so that neither size nor place has a limit. */
import { Buffer, BufferUsage, Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { FRAME, PROJECT, programOf, THROUGH, TONE } from "./glsl.ts";
import { type BlendKind, type DrawCall, drawCall, issue } from "./renderer.ts";
import { LIMIT_PEAK, PEAK_DEX_PER_MAG } from "./screenLight.ts";
import {
  createStarRows,
  gatherPoints,
  gatherQuads,
  type LowAir,
  type QuadField,
  STAR_BYTES,
  type StarRows,
} from "./starGather.ts";
import { createStarlight, fillStarlight, type Starlight } from "./starlight.ts";
import {
  BELOW_LIMIT_MAG,
  CORE_FRAGMENT,
  CORE_VERTEX,
  CUT_GLARE_FRAGMENT,
  GLARE_FRAGMENT,
  GLARE_MAG,
  GLARE_PX,
  GLARE_PX_PER_MAG,
  GLARE_VERTEX,
  POINT_FRAGMENT,
  POINT_VERTEX,
} from "./starShaders.ts";
import type { FieldView } from "./view.ts";

/** Stars of one kind, the buffer that carries them, and the calls that draw them. */
interface Gathered {
  readonly rows: StarRows;
  readonly stars: Buffer;
  /** Two triangles a star; points need none. */
  readonly corners: Buffer | null;
  readonly calls: readonly DrawCall[];
}
export interface StarLayer {
  readonly points: Gathered;
  /** Glare wholly inside the soft edge, and glare that the stop cuts into. */
  readonly whole: Gathered;
  readonly cut: Gathered;
  readonly field: QuadField;
  readonly light: Starlight;
  readonly air: LowAir;
}
const PER_QUAD = 6;

/** Two triangles over the four corners of each of so many quads. */
const quadCorners = (quads: number): Uint32Array => {
  const order = new Uint32Array(quads * PER_QUAD);
  for (let i = 0; i < quads; i++)
    for (let k = 0; k < PER_QUAD; k++) order[i * PER_QUAD + k] = 4 * i + [0, 1, 2, 2, 1, 3][k]!;
  return order;
};
const gathered = (rows: StarRows, shaders: readonly (readonly [Shader, BlendKind])[]): Gathered => {
  const points = rows.copies === 1;
  const topology = points ? "point-list" : "triangle-list";
  const stars = new Buffer({ data: rows.floats, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
  const corners = points
    ? null
    : new Buffer({ data: quadCorners(rows.capacity), usage: BufferUsage.INDEX | BufferUsage.COPY_DST });
  const geometry = new Geometry({
    attributes: {
      aDir: { buffer: stars, format: "float32x3", stride: STAR_BYTES, offset: 0 },
      aMagColour: { buffer: stars, format: "snorm16x2", stride: STAR_BYTES, offset: 12 },
    },
    ...(corners && { indexBuffer: corners }),
    topology,
  });
  return { rows, stars, corners, calls: shaders.map(([shader, kind]) => drawCall(geometry, shader, kind, topology)) };
};

export const createStarLayer = (frame: Frame): StarLayer => {
  const light = createStarlight();
  const resources = { frame: frame.group, light: light.group };
  const shader = (name: string, vertex: readonly string[], fragment: readonly string[]) =>
    new Shader({ glProgram: programOf(name, vertex, fragment), resources });
  const core = [shader("star-core", CORE_VERTEX, CORE_FRAGMENT), "add"] as const;
  // Glare is laid over the sky as one light over another on a wall: where many stars stand close, it never whitens all.
  const glare = (name: string, fragment: readonly string[]) =>
    [shader(name, GLARE_VERTEX, fragment), "screen"] as const;
  return {
    points: gathered(createStarRows(1), [[shader("star-point", POINT_VERTEX, POINT_FRAGMENT), "add"]]),
    whole: gathered(createStarRows(4), [glare("star-glare", GLARE_FRAGMENT), core]),
    cut: gathered(createStarRows(4), [glare("star-cut-glare", CUT_GLARE_FRAGMENT), core]),
    field: { stereographic: false, pxPerPlane: 0, wholePx: 0, edgePx: 0, glarePx: 0, glarePxPerMag: 0 },
    light,
    air: { zenith: new Float64Array(3), lossMilliMag: [], inLimitMilliMag: 0 },
  };
};

const drawGathered = (renderer: WebGLRenderer, { rows, stars, corners, calls }: Gathered): void => {
  if (rows.count === 0) return;
  if (stars.data !== rows.floats) {
    stars.data = rows.floats;
    if (corners) corners.data = quadCorners(rows.capacity);
  }
  stars.update(rows.count * rows.copies * STAR_BYTES);
  for (const call of calls) {
    call.size = corners ? rows.count * PER_QUAD : rows.count;
    issue(renderer, call);
  }
};

/** Cosine of the angle from the centre that stands at so many px from it. */
const cosAt = (px: number, frame: Frame, view: FieldView): number => {
  const plane = Math.max(0, px) / frame.pxPerPlane;
  return view.projection === "stereographic" ? Math.cos(2 * Math.atan(plane / 2)) : Math.cos(Math.atan(plane));
};

/** The air of a view under an open sky that says what it takes; null without. */
const airOf = (air: LowAir, { horizon }: FieldView): LowAir | null => {
  if (!horizon?.lossMilliMag) return null;
  for (let i = 0; i < 3; i++) air.zenith[i] = horizon.horizonFromIcrs[6 + i]!;
  air.lossMilliMag = horizon.lossMilliMag;
  air.inLimitMilliMag = horizon.lossInLimitMilliMag ?? 0;
  return air;
};

/** Draws the stars of a view. */
export const drawStars = (renderer: WebGLRenderer, layer: StarLayer, frame: Frame, view: FieldView): void => {
  const { field, points, whole, cut, light } = layer;
  fillStarlight(light, frame, view);
  const { blocks, viewFromIcrs } = view;
  field.stereographic = view.projection === "stereographic";
  field.pxPerPlane = frame.pxPerPlane;
  field.wholePx = frame.cutPx - frame.softPx;
  field.edgePx = frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx;
  field.glarePx = GLARE_PX * frame.pxPerStarUnit;
  field.glarePxPerMag = GLARE_PX_PER_MAG * frame.pxPerStarUnit;
  const brightTo = Math.ceil((view.limitMag - GLARE_MAG) * 1000) - 1;
  const faintTo = Math.floor((view.limitMag + BELOW_LIMIT_MAG) * 1000);
  const air = airOf(layer.air, view);
  gatherPoints(points.rows, blocks, viewFromIcrs, cosAt(field.edgePx, frame, view), brightTo, faintTo, air);
  gatherQuads(whole.rows, cut.rows, blocks, viewFromIcrs, field, brightTo, air);
  drawGathered(renderer, points);
  drawGathered(renderer, whole);
  drawGathered(renderer, cut);
};

/** One more light on the stars that are quads. */
export interface MoreLight {
  readonly uniforms: Readonly<Record<string, Float32Array>>;
  /** After the stars, in the same frame. */
  draw(renderer: WebGLRenderer): void;
}
/**
 * Makes one from shader text that comes later, over what the stars' own stands on; a fragment finds the law of their light in
 * `LIMIT_LIGHT` and `LOG2_PER_MAG`.
 * @param uniforms - so many numbers each, by name
 */
export const moreLight = (
  { whole, cut }: StarLayer,
  frame: Frame,
  vertex: string,
  fragment: string,
  uniforms: Readonly<Record<string, 2 | 3>>,
): MoreLight => {
  const sizes = Object.entries(uniforms).map(([name, size]) => [
    name,
    { value: new Float32Array(size), type: `vec${size}<f32>` as const },
  ]);
  const group = new UniformGroup(Object.fromEntries(sizes));
  const law = `const float LIMIT_LIGHT = ${LIMIT_PEAK}; const float LOG2_PER_MAG = ${PEAK_DEX_PER_MAG * Math.log2(10)};`;
  const glProgram = programOf("more-light", [FRAME, PROJECT, vertex], [FRAME, TONE, THROUGH, law, fragment]);
  const shader = new Shader({ glProgram, resources: { frame: frame.group, own: group } });
  const rows = [whole.rows, cut.rows];
  const calls = [whole, cut].map((one) => drawCall(one.calls[0]!.geometry, shader, "add", "triangle-list"));
  return {
    uniforms: group.uniforms as unknown as MoreLight["uniforms"],
    draw(renderer) {
      for (let i = 0; i < calls.length; i++) {
        calls[i]!.size = rows[i]!.count * PER_QUAD;
        issue(renderer, calls[i]!);
      }
    },
  };
};
