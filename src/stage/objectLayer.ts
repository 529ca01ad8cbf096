/** What an eye sees of galaxies, clusters that do not resolve, and nebulae: light within an ellipse, by its form. */
import { Buffer, BufferUsage, Geometry, Shader, type WebGLRenderer } from "pixi.js";
import type { Dir } from "#core/seams/index.ts";
import type { Frame } from "./frame.ts";
import { GAZE, OBJECT_GAZE } from "./gaze.ts";
import { FRAME, PROJECT, programOf, THROUGH, TONE } from "./glsl.ts";
import { FORM_NUMBER, FORMS } from "./objectForms.ts";
import { MIST } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import type { FieldObject } from "./view.ts";

const FLOATS = 15;
/** A granule of a cluster is so wide, px of the page. */
const GRANULE_PX = 3.4;
/** The margin of what has none: nothing of it fades. */
const STANDS_ALL_MAG = 99;
/** More are never in one field. */
const MOST_OBJECTS = 256;
/** What all patches of light have; how they look is their layer's. */
type Lit = Pick<FieldObject, "dir" | "majorRad" | "minorRad" | "axisRad" | "peak" | "marginMag">;
/** How the patches of a layer look. */
export interface LookOf<T> {
  readonly name: string;
  /** Shader text of `vec3 tintOf(vec4 form)`. */
  readonly tint: string;
  readonly fragment: readonly string[];
  readonly blend: "screen" | "over";
  /** Writes the four numbers of `aForm`. */
  write(data: Float32Array, at: number, patch: T): void;
}
export interface ObjectLayer<T extends Lit = FieldObject> {
  readonly look: LookOf<T>;
  readonly call: DrawCall;
  readonly buffer: Buffer;
  readonly data: Float32Array;
  version: number;
}

/** Granules go by the listed size, not by that on the window: they stay where they are while the field moves. */
const VERTEX = `
in vec3 aDir;
in vec3 aMajor;
in vec3 aMinor;
in float aPeak;
in vec4 aForm;
in float aMargin;
in vec2 aCorner;
out vec2 vAt;
flat out vec4 vForm;
flat out float vCells;
flat out vec3 vLight;
flat out float vKept;
const float LEAST_PX = 2.2;
vec2 longEnough(vec2 axis) { float size = length(axis); return axis * max(1., LEAST_PX * uLook.y / max(size, 1e-6)); }
void main() {
  vec3 v = viewOf(aDir);
  gl_Position = NOWHERE;
  if (planeDivisor(v) <= .02 || aPeak <= 0.) return;
  vec2 centre = windowOf(v);
  vec2 major = longEnough(windowOf(viewOf(normalize(aDir + aMajor))) - centre);
  vec2 minor = longEnough(windowOf(viewOf(normalize(aDir + aMinor))) - centre);
  vAt = aCorner;
  vForm = aForm;
  vCells = floor(length(aMajor) * uField.z / (${GRANULE_PX} * uLook.y)) + .5;
  vLight = toneOf(tintOf(aForm)) * (aPeak * presence(aMargin - uEye.y, aForm.y)) * uRoom;
  vKept = keptStraight(aMargin - uEye.y);
  gl_Position = clipOf(centre + aCorner.x * major + aCorner.y * minor);
}`;
/** What the vertices hand over. */
const LIT = `
in vec2 vAt;
flat in vec4 vForm;
flat in float vCells;
flat in vec3 vLight;
flat in float vKept;
`;
const MISTS: LookOf<FieldObject> = {
  name: "objects",
  tint: `vec3 tintOf(vec4 form) { return vec3(${MIST.map((value) => value.toFixed(4)).join(", ")}); }`,
  fragment: [
    GAZE,
    LIT,
    FORMS,
    `void main() {
       vec3 light = vLight * mix(1., vKept, straightAt(gl_FragCoord.xy));
       outColour = vec4(light * lightOf(vAt, vForm, vCells) * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
     }`,
  ],
  blend: "screen",
  write(data, at, { look }) {
    data[at] = look ? FORM_NUMBER[look.form] : 0;
    data[at + 1] = look?.seed ?? 0;
    data[at + 2] = look?.resolved ?? 0;
    data[at + 3] = look?.cut ?? 0;
  },
};

/** The layer of the objects that glow. */
export const createObjectLayer = (frame: Frame): ObjectLayer => createLayerOf(frame, MISTS);

/** A layer of patches of light that look as told. */
export const createLayerOf = <T extends Lit>(frame: Frame, look: LookOf<T>): ObjectLayer<T> => {
  const data = new Float32Array(MOST_OBJECTS * FLOATS);
  const buffer = new Buffer({ data, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
  const part = (format: "float32" | "float32x3" | "float32x4", offset: number) => ({
    buffer,
    format,
    stride: FLOATS * 4,
    offset,
    instance: true,
  });
  const corners = new Buffer({ data: new Float32Array([-1, -1, 1, -1, -1, 1, 1, 1]), usage: BufferUsage.VERTEX });
  const geometry = new Geometry({
    attributes: {
      aDir: part("float32x3", 0),
      aMajor: part("float32x3", 12),
      aMinor: part("float32x3", 24),
      aPeak: part("float32", 36),
      aForm: part("float32x4", 40),
      aMargin: part("float32", 56),
      aCorner: { buffer: corners, format: "float32x2", stride: 8, offset: 0 },
    },
    topology: "triangle-strip",
  });
  const glProgram = programOf(
    look.name,
    [FRAME, PROJECT, TONE, GAZE, OBJECT_GAZE, look.tint, VERTEX],
    [FRAME, THROUGH, look.fragment.join("")],
  );
  const shader = new Shader({ glProgram, resources: { frame: frame.group } });
  return { look, call: drawCall(geometry, shader, look.blend, "triangle-strip"), buffer, data, version: Number.NaN };
};

/** Tangents of the sky at a direction, towards north and east; at the poles north is the x axis's side. */
const writeAxes = (data: Float32Array, at: number, dir: Dir, object: Lit): void => {
  const [x, y, z] = dir;
  const level = Math.sqrt(x * x + y * y);
  const eastX = level > 0 ? -y / level : 0;
  const eastY = level > 0 ? x / level : 1;
  const northX = -z * eastY;
  const northY = z * eastX;
  const towards = (angleRad: number, halfRad: number, offset: number) => {
    const north = Math.cos(angleRad) * Math.tan(halfRad);
    const east = Math.sin(angleRad) * Math.tan(halfRad);
    data[at + offset] = north * northX + east * eastX;
    data[at + offset + 1] = north * northY + east * eastY;
    data[at + offset + 2] = north * level;
  };
  towards(object.axisRad, object.majorRad / 2, 3);
  towards(object.axisRad + Math.PI / 2, object.minorRad / 2, 6);
};

/** Draws the patches of a layer, written to its buffer anew when their version changed. */
export const drawObjects = <T extends Lit>(
  renderer: WebGLRenderer,
  layer: ObjectLayer<T>,
  objects: readonly T[],
  version: number,
): void => {
  const count = Math.min(MOST_OBJECTS, objects.length);
  if (layer.version !== version) {
    layer.version = version;
    for (let i = 0; i < count; i++) {
      const object = objects[i]!;
      layer.data.set(object.dir, i * FLOATS);
      writeAxes(layer.data, i * FLOATS, object.dir, object);
      layer.data[i * FLOATS + 9] = object.peak;
      layer.look.write(layer.data, i * FLOATS + 10, object);
      layer.data[i * FLOATS + 14] = object.marginMag ?? STANDS_ALL_MAG;
    }
    if (count > 0) layer.buffer.update(count * FLOATS * 4);
  }
  layer.call.size = count > 0 ? 4 : 0;
  layer.call.instanceCount = count;
  issue(renderer, layer.call);
};
