/** Concentric rings as one mesh: radii and colours are uniforms, so gradients cost a fragment next to nothing. */
import { Buffer, BufferUsage, Geometry, Shader, UniformGroup } from "pixi.js";
import { DITHER, FRAME, PROJECT, programOf } from "./glsl.ts";

const SEGMENTS = 192;
/** Most circles a mesh can have. */
export const RING_STOPS = 16;
const INDICES_PER_STRIP = SEGMENTS * 6;

const vertices = (): Float32Array => {
  const data = new Float32Array(RING_STOPS * (SEGMENTS + 1) * 3);
  let at = 0;
  for (let stop = 0; stop < RING_STOPS; stop++) {
    for (let i = 0; i <= SEGMENTS; i++) {
      const angle = (2 * Math.PI * i) / SEGMENTS;
      data.set([Math.cos(angle), Math.sin(angle), stop], at);
      at += 3;
    }
  }
  return data;
};
const indices = (): Uint16Array => {
  const data = new Uint16Array((RING_STOPS - 1) * INDICES_PER_STRIP);
  let at = 0;
  for (let stop = 0; stop < RING_STOPS - 1; stop++) {
    for (let i = 0; i < SEGMENTS; i++) {
      const inner = stop * (SEGMENTS + 1) + i;
      const outer = inner + SEGMENTS + 1;
      data.set([inner, outer, inner + 1, inner + 1, outer, outer + 1], at);
      at += 6;
    }
  }
  return data;
};

/** Attribute `aRing`: cosine, sine, number of the stop. */
export const createRingGeometry = (): Geometry =>
  new Geometry({
    attributes: {
      aRing: {
        buffer: new Buffer({ data: vertices(), usage: BufferUsage.VERTEX | BufferUsage.STATIC }),
        format: "float32x3",
        stride: 12,
        offset: 0,
      },
    },
    indexBuffer: new Buffer({ data: indices(), usage: BufferUsage.INDEX | BufferUsage.STATIC }),
  });
export const stripStart = (strip: number): number => strip * INDICES_PER_STRIP;
export const stripsSize = (strips: number): number => strips * INDICES_PER_STRIP;

/** Vertex text that puts the rings where `uRadii` says; `vRing` is the number of the stop. */
export const RING_VERTEX = `
in vec3 aRing;
uniform float uRadii[${RING_STOPS}];
vec2 ringWindow() { return uField.xy + aRing.xy * uRadii[int(aRing.z)]; }
`;

export interface RingStops {
  readonly group: UniformGroup;
  readonly radii: Float32Array;
  /** Premultiplied red, green, blue, alpha of each stop. */
  readonly colours: Float32Array;
  count: number;
}
export const createRingStops = (): RingStops => {
  const radii = new Float32Array(RING_STOPS);
  const colours = new Float32Array(RING_STOPS * 4);
  const group = new UniformGroup({
    uRadii: { value: radii, type: "f32", size: RING_STOPS },
    uColours: { value: colours, type: "vec4<f32>", size: RING_STOPS },
  });
  return { group: group as unknown as UniformGroup, radii, colours, count: 0 };
};
/** Adds a circle outside of those before it. */
export const addStop = (stops: RingStops, radiusPx: number, rgb: ArrayLike<number>, alpha = 1): void => {
  const i = stops.count++;
  stops.radii[i] = radiusPx;
  for (let c = 0; c < 3; c++) stops.colours[i * 4 + c] = (rgb[c] ?? 0) * alpha;
  stops.colours[i * 4 + 3] = alpha;
};

/** Rings coloured stop by stop, straight between them. */
export const createRingShader = (frame: UniformGroup, stops: RingStops): Shader =>
  new Shader({
    glProgram: programOf(
      "rings",
      [
        FRAME,
        PROJECT,
        RING_VERTEX,
        `uniform vec4 uColours[${RING_STOPS}];
         out vec4 vColour;
         void main() { vColour = uColours[int(aRing.z)]; gl_Position = clipOf(ringWindow()); }`,
      ],
      [
        DITHER,
        `in vec4 vColour;
         void main() { outColour = vec4(vColour.rgb + dither() * step(1e-4, vColour.rgb), vColour.a); }`,
      ],
    ),
    resources: { frame, stops: stops.group },
  });
