/** Stars as points, the bright ones as quads with their glare. */
import { Buffer, BufferUsage, Geometry, Shader, type WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import { programOf } from "./glsl.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import { createPackedStars, type PackedStars, packStars, STAR_BYTES, type StarPack } from "./starPack.ts";
import {
  BELOW_LIMIT_MAG,
  GLARE_FRAGMENT,
  GLARE_MAG,
  GLARE_VERTEX,
  POINT_FRAGMENT,
  POINT_VERTEX,
} from "./starShaders.ts";
import type { FieldView } from "./view.ts";

export interface StarLayer {
  readonly packed: PackedStars;
  readonly points: DrawCall;
  readonly glare: DrawCall;
  readonly pointBuffer: Buffer;
  readonly glareBuffer: Buffer;
}

const starBuffer = (pack: StarPack): Buffer =>
  new Buffer({ data: pack.floats, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
const starAttributes = (buffer: Buffer, instance: boolean) => ({
  aDir: { buffer, format: "float32x3" as const, stride: STAR_BYTES, offset: 0, instance },
  aMagColour: { buffer, format: "snorm16x2" as const, stride: STAR_BYTES, offset: 12, instance },
});
const corners = (): Buffer =>
  new Buffer({ data: new Float32Array([-1, -1, 1, -1, -1, 1, 1, 1]), usage: BufferUsage.VERTEX | BufferUsage.STATIC });

/** @param packed - kept over a loss of the context, so that nothing needs to be packed again */
export const createStarLayer = (frame: Frame, packed: PackedStars = createPackedStars()): StarLayer => {
  const pointBuffer = starBuffer(packed.all);
  const glareBuffer = starBuffer(packed.bright);
  const points = new Geometry({ attributes: starAttributes(pointBuffer, false), topology: "point-list" });
  const glare = new Geometry({
    attributes: {
      ...starAttributes(glareBuffer, true),
      aCorner: { buffer: corners(), format: "float32x2" as const, stride: 8, offset: 0 },
    },
    topology: "triangle-strip",
  });
  const shader = (name: string, vertex: readonly string[], fragment: readonly string[]) =>
    new Shader({ glProgram: programOf(name, vertex, fragment), resources: { frame: frame.group } });
  return {
    packed,
    pointBuffer,
    glareBuffer,
    points: drawCall(points, shader("star-points", POINT_VERTEX, POINT_FRAGMENT), "add", "point-list"),
    glare: drawCall(glare, shader("star-glare", GLARE_VERTEX, GLARE_FRAGMENT), "add", "triangle-strip"),
  };
};

const hand = (buffer: Buffer, pack: StarPack): void => {
  if (buffer.data !== pack.floats) buffer.data = pack.floats;
  if (pack.count > 0) buffer.update(pack.count * STAR_BYTES);
};

/** Draws the stars of a view; hands them over first if blocks or limit changed. */
export const drawStars = (renderer: WebGLRenderer, layer: StarLayer, view: FieldView): void => {
  const { packed, points, glare } = layer;
  const faintest = view.limitMag + BELOW_LIMIT_MAG;
  if (packStars(packed, view.blocks, view.blocksVersion, faintest, GLARE_MAG + BELOW_LIMIT_MAG)) {
    hand(layer.pointBuffer, packed.all);
    hand(layer.glareBuffer, packed.bright);
  }
  points.size = packed.all.count;
  glare.size = packed.bright.count > 0 ? 4 : 0;
  glare.instanceCount = packed.bright.count;
  issue(renderer, points);
  issue(renderer, glare);
};
