/** Stars as points; those bright enough for glare as quads, so that neither size nor place has a limit. */
import { Buffer, BufferUsage, Geometry, Shader, type WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { programOf } from "./glsl.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { createIndexList, type IndexList, listPoints, listQuads, type QuadField } from "./starCull.ts";
import { createPackedStars, type PackedStars, packStars, STAR_BYTES, type StarPack } from "./starPack.ts";
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

/** A list of indices, the buffer that carries it, and the calls that draw it. */
interface Listed {
  readonly list: IndexList;
  readonly buffer: Buffer;
  readonly calls: readonly DrawCall[];
}
export interface StarLayer {
  readonly packed: PackedStars;
  readonly pointStars: Buffer;
  readonly brightStars: Buffer;
  readonly points: Listed;
  /** Glare wholly inside the soft edge, and glare that the stop cuts into. */
  readonly whole: Listed;
  readonly cut: Listed;
  readonly field: QuadField;
}

const bufferOf = (pack: StarPack): Buffer =>
  new Buffer({ data: pack.floats, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
const listedOf = (stars: Buffer, perStar: 1 | 6, shaders: readonly Shader[]): Listed => {
  const list = createIndexList(perStar);
  const topology = perStar === 1 ? "point-list" : "triangle-list";
  const buffer = new Buffer({ data: list.indices, usage: BufferUsage.INDEX | BufferUsage.COPY_DST });
  const geometry = new Geometry({
    attributes: {
      aDir: { buffer: stars, format: "float32x3", stride: STAR_BYTES, offset: 0 },
      aMagColour: { buffer: stars, format: "snorm16x2", stride: STAR_BYTES, offset: 12 },
    },
    indexBuffer: buffer,
    topology,
  });
  return { list, buffer, calls: shaders.map((shader) => drawCall(geometry, shader, "add", topology)) };
};

/** @param packed - kept over a loss of the context, so that nothing needs to be packed again */
export const createStarLayer = (frame: Frame, packed: PackedStars = createPackedStars()): StarLayer => {
  const shader = (name: string, vertex: readonly string[], fragment: readonly string[]) =>
    new Shader({ glProgram: programOf(name, vertex, fragment), resources: { frame: frame.group } });
  const pointStars = bufferOf(packed.all);
  const brightStars = bufferOf(packed.bright);
  const core = shader("star-core", CORE_VERTEX, CORE_FRAGMENT);
  return {
    packed,
    pointStars,
    brightStars,
    points: listedOf(pointStars, 1, [shader("star-point", POINT_VERTEX, POINT_FRAGMENT)]),
    whole: listedOf(brightStars, 6, [shader("star-glare", GLARE_VERTEX, GLARE_FRAGMENT), core]),
    cut: listedOf(brightStars, 6, [shader("star-cut-glare", GLARE_VERTEX, CUT_GLARE_FRAGMENT), core]),
    field: { stereographic: false, pxPerPlane: 0, wholePx: 0, edgePx: 0, glarePx: 0, glarePxPerMag: 0 },
  };
};

const hand = (buffer: Buffer, pack: StarPack): void => {
  if (buffer.data !== pack.floats) buffer.data = pack.floats;
  if (pack.count > 0) buffer.update(pack.count * pack.copies * STAR_BYTES);
};
const drawListed = (renderer: WebGLRenderer, { list, buffer, calls }: Listed): void => {
  if (list.count === 0) return;
  const size = list.count * list.perStar;
  if (buffer.data !== list.indices) buffer.data = list.indices;
  buffer.update(size * list.indices.BYTES_PER_ELEMENT);
  for (const call of calls) {
    call.size = size;
    issue(renderer, call);
  }
};

/** Cosine of the angle from the centre that stands at so many px from it. */
const cosAt = (px: number, frame: Frame, view: FieldView): number => {
  const plane = Math.max(0, px) / frame.pxPerPlane;
  return view.projection === "stereographic" ? Math.cos(2 * Math.atan(plane / 2)) : Math.cos(Math.atan(plane));
};

/** Draws the stars of a view; hands them to the graphics processor first if blocks or limit changed. */
export const drawStars = (renderer: WebGLRenderer, layer: StarLayer, frame: Frame, view: FieldView): void => {
  const { packed, points, whole, cut } = layer;
  const faintest = view.limitMag + BELOW_LIMIT_MAG;
  if (packStars(packed, view.blocks, view.blocksVersion, faintest, GLARE_MAG + BELOW_LIMIT_MAG)) {
    hand(layer.pointStars, packed.all);
    hand(layer.brightStars, packed.bright);
  }
  const { field } = layer;
  field.stereographic = view.projection === "stereographic";
  field.pxPerPlane = frame.pxPerPlane;
  field.wholePx = frame.cutPx - frame.softPx;
  field.edgePx = frame.spillPx > 0 ? frame.rimOuterPx + frame.spillPx : frame.stopPx;
  field.glarePx = GLARE_PX * frame.pxPerStarUnit;
  field.glarePxPerMag = GLARE_PX_PER_MAG * frame.pxPerStarUnit;
  const brightTo = Math.ceil((view.limitMag - GLARE_MAG) * 1000) - 1;
  const cosReach = cosAt(field.edgePx, frame, view);
  listPoints(points.list, packed.all, view.viewFromIcrs, cosReach, brightTo, Math.floor(faintest * 1000));
  listQuads(whole.list, cut.list, packed.bright, view.viewFromIcrs, field, brightTo);
  drawListed(renderer, points);
  drawListed(renderer, whole);
  drawListed(renderer, cut);
};
