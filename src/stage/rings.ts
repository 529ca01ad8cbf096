/** Concentric rings as one mesh: radii and colours are uniforms, so gradients cost a fragment next to nothing. */
import { Buffer, BufferUsage, Geometry, Shader, UniformGroup } from "pixi.js";
import { FRAME, PROJECT, programOf } from "./glsl.ts";

/** Most circles a mesh can have. */
export const RING_STOPS = 14;
/** A circle of the barrel's size made of so many straight pieces is nowhere off by more than .3 px. */
export const FINE = 80;
/** Enough for a slow gradient without an edge; where the processor draws in software, a triangle costs half a microsecond. */
export const COARSE = 24;
/** Pieces of the net that carries the open sky. */
export const NET = 40;

/** Strips of a mesh between the stops `from` and `to`, all cut into so many pieces. */
export interface Band {
  readonly from: number;
  readonly to: number;
  readonly segments: number;
}
const verticesOf = ({ from, to, segments }: Band): number[] => {
  const data: number[] = [];
  for (let stop = from; stop <= to; stop++) {
    for (let i = 0; i <= segments; i++) {
      const angle = (2 * Math.PI * i) / segments;
      data.push(Math.cos(angle), Math.sin(angle), stop);
    }
  }
  return data;
};
const indicesOf = ({ from, to, segments }: Band, first: number, seen: (stop: number, turn: number) => boolean) => {
  const data: number[] = [];
  for (let stop = from; stop < to; stop++) {
    for (let i = 0; i < segments; i++) {
      if (!seen(stop, i / segments) && !seen(stop, (i + 1) / segments)) continue;
      const inner = first + (stop - from) * (segments + 1) + i;
      const outer = inner + segments + 1;
      data.push(inner, outer, inner + 1, inner + 1, outer, outer + 1);
    }
  }
  return data;
};
const always = (): boolean => true;
/**
 * Indices of all bands in their order, the first strip first.
 * @param seen - whether a strip from that stop on may be seen at a share of the whole turn; pieces seen at neither end are left out
 */
export const ringIndices = (bands: readonly Band[], seen: (stop: number, turn: number) => boolean = always) => {
  let first = 0;
  return Uint16Array.from(
    bands.flatMap((band) => {
      const data = indicesOf(band, first, seen);
      first += (band.to - band.from + 1) * (band.segments + 1);
      return data;
    }),
  );
};

/** Attribute `aRing`: cosine, sine, number of the stop. */
export const createBandGeometry = (bands: readonly Band[]): Geometry =>
  new Geometry({
    attributes: {
      aRing: {
        buffer: new Buffer({
          data: Float32Array.from(bands.flatMap(verticesOf)),
          usage: BufferUsage.VERTEX | BufferUsage.STATIC,
        }),
        format: "float32x3",
        stride: 12,
        offset: 0,
      },
    },
    indexBuffer: new Buffer({ data: ringIndices(bands), usage: BufferUsage.INDEX | BufferUsage.STATIC }),
  });
/** As many strips as there can be, all cut into so many pieces. */
export const createRingGeometry = (segments: number): Geometry =>
  createBandGeometry([{ from: 0, to: RING_STOPS - 1, segments }]);

/** Indices of so many strips; strip n begins after the indices of n strips. */
export const stripsSize = (strips: number, segments: number): number => strips * segments * 6;

/** Puts the rings where `uRadii` says; `aRing.z` is the number of the stop. */
export const RING_VERTEX = `
in vec3 aRing;
uniform float uRadii[${RING_STOPS}];
uniform vec4 uColours[${RING_STOPS}];
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

/** Opaque rings coloured stop by stop, straight between them: a varying less than where there is an alpha. */
export const createPlainRingShader = (frame: UniformGroup, stops: RingStops): Shader =>
  new Shader({
    glProgram: programOf(
      "plain-rings",
      [
        FRAME,
        PROJECT,
        RING_VERTEX,
        `out vec3 vColour;
         void main() { vColour = uColours[int(aRing.z)].rgb; gl_Position = clipOf(ringWindow()); }`,
      ],
      ["in vec3 vColour; void main() { outColour = vec4(vColour, 1.); }"],
    ),
    resources: { frame, stops: stops.group },
  });
/** Rings coloured stop by stop, straight between them. */
export const createRingShader = (frame: UniformGroup, stops: RingStops): Shader =>
  new Shader({
    glProgram: programOf(
      "rings",
      [
        FRAME,
        PROJECT,
        RING_VERTEX,
        `out vec4 vColour;
         void main() { vColour = uColours[int(aRing.z)]; gl_Position = clipOf(ringWindow()); }`,
      ],
      ["in vec4 vColour; void main() { outColour = vColour; }"],
    ),
    resources: { frame, stops: stops.group },
  });
/**
 * Opaque colours mixed over half a step of the display's 256 so that slow gradients show no rings (the R2 sequence, Roberts
 * 2018). The pattern comes as a varying: the pixel's own coordinates would double the cost in software. A channel of 0
 * stays 0.
 */
export const SOFT_VERTEX = `
out vec4 vSoft;
void softly(vec3 colour, vec2 window) {
  vec3 lowest = mix(vec3(1.), vec3(.5), step(1e-4, colour)) / 255.;
  vSoft = vec4(colour - lowest, dot(window, vec2(.7548777, .5698403)));
  gl_Position = clipOf(window);
}
`;
export const SOFT_FRAGMENT =
  "in vec4 vSoft; void main() { outColour = vec4(vSoft.rgb + fract(vSoft.a) * .0039215, 1.); }";
export const createSoftRingShader = (frame: UniformGroup, stops: RingStops): Shader =>
  new Shader({
    glProgram: programOf(
      "soft-rings",
      [FRAME, PROJECT, RING_VERTEX, SOFT_VERTEX, "void main() { softly(uColours[int(aRing.z)].rgb, ringWindow()); }"],
      [SOFT_FRAGMENT],
    ),
    resources: { frame, stops: stops.group },
  });
