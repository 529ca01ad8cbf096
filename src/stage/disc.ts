/** A filled circle as a mesh. */
import { Buffer, BufferUsage, Geometry } from "pixi.js";

/** A disc of the barrel's size made of twice so many straight pieces is nowhere off by more than .3 px. */
const SLABS = 40;
/** Indices of the whole disc. */
export const DISC_SIZE = SLABS * 6;
/**
 * A disc of radius 1 cut into level slabs, attribute `aDisc`. Wide and low: where the processor draws in software, a row
 * of a triangle costs as much as some dozen pixels, so spokes would double the price of the sky.
 */
export const createDiscGeometry = (): Geometry => {
  const corners = new Float32Array((SLABS + 1) * 4);
  const order = new Uint16Array(DISC_SIZE);
  for (let i = 0; i <= SLABS; i++) {
    const angle = Math.PI * (i / SLABS - 0.5);
    corners.set([-Math.cos(angle), Math.sin(angle), Math.cos(angle), Math.sin(angle)], i * 4);
    if (i < SLABS)
      order.set(
        [0, 1, 2, 2, 1, 3].map((corner) => 2 * i + corner),
        i * 6,
      );
  }
  return new Geometry({
    attributes: {
      aDisc: {
        buffer: new Buffer({ data: corners, usage: BufferUsage.VERTEX | BufferUsage.STATIC }),
        format: "float32x2",
        stride: 8,
        offset: 0,
      },
    },
    indexBuffer: new Buffer({ data: order, usage: BufferUsage.INDEX | BufferUsage.STATIC }),
  });
};
/** Vertex text of a disc that reaches a px past the radius `uDiscPx`. */
export const DISC_VERTEX = `
in vec2 aDisc;
uniform float uDiscPx;
void main() { gl_Position = clipOf(uField.xy + aDisc * (uDiscPx + 1.)); }`;
