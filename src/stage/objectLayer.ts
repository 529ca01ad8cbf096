/** What an eye sees of galaxies, clusters that do not resolve, and nebulae: light within an ellipse, by its form. */
import { Buffer, BufferUsage, Geometry, Shader, type WebGLRenderer } from "pixi.js";
import type { Dir } from "#core/seams/index.ts";
import type { Frame } from "./frame.ts";
import { GAZE, OBJECT_GAZE } from "./gaze.ts";
import { FRAME, PROJECT, programOf, THROUGH, TONE } from "./glsl.ts";
import { FORM_NUMBER, FORMS } from "./objectForms.ts";
import { MIST } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import type { FieldObject, FieldView } from "./view.ts";

const FLOATS = 15;
/** A granule of a cluster is so wide, px of the page. */
const GRANULE_PX = 3.4;
/** The margin of what has none: nothing of it fades. */
const STANDS_ALL_MAG = 99;
/** More are never in one field. */
const MOST_OBJECTS = 256;
export interface ObjectLayer {
  readonly call: DrawCall;
  readonly buffer: Buffer;
  readonly data: Float32Array;
  version: number;
}

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
  // By the listed size, not by that on the window: granules stay where they are while the field moves.
  vCells = floor(length(aMajor) * uField.z / (${GRANULE_PX} * uLook.y)) + .5;
  vLight = toneOf(vec3(${MIST.map((value) => value.toFixed(4)).join(", ")})) * (aPeak * presence(aMargin - uEye.y, aForm.y)) * uRoom;
  vKept = keptStraight(aMargin - uEye.y);
  gl_Position = clipOf(centre + aCorner.x * major + aCorner.y * minor);
}`;
const FRAGMENT = `
in vec2 vAt;
flat in vec4 vForm;
flat in float vCells;
flat in vec3 vLight;
flat in float vKept;
${FORMS}
void main() {
  vec3 light = vLight * mix(1., vKept, straightAt(gl_FragCoord.xy));
  outColour = vec4(light * lightOf(vAt, vForm, vCells) * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
}`;

export const createObjectLayer = (frame: Frame): ObjectLayer => {
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
    "objects",
    [FRAME, PROJECT, TONE, GAZE, OBJECT_GAZE, VERTEX],
    [FRAME, THROUGH, GAZE, FRAGMENT],
  );
  const shader = new Shader({ glProgram, resources: { frame: frame.group } });
  return { call: drawCall(geometry, shader, "screen", "triangle-strip"), buffer, data, version: Number.NaN };
};

/** Tangents of the sky at a direction, towards north and east; at the poles north is the x axis's side. */
const writeAxes = (data: Float32Array, at: number, dir: Dir, object: FieldObject): void => {
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

const writeForm = (data: Float32Array, at: number, { look }: FieldObject): void => {
  data[at] = look ? FORM_NUMBER[look.form] : 0;
  data[at + 1] = look?.seed ?? 0;
  data[at + 2] = look?.resolved ?? 0;
  data[at + 3] = look?.cut ?? 0;
};

/** Draws the objects of a view, written to the buffer anew when their version changed. */
export const drawObjects = (renderer: WebGLRenderer, layer: ObjectLayer, view: FieldView): void => {
  const count = Math.min(MOST_OBJECTS, view.objects.length);
  if (layer.version !== view.objectsVersion) {
    layer.version = view.objectsVersion;
    for (let i = 0; i < count; i++) {
      const object = view.objects[i]!;
      layer.data.set(object.dir, i * FLOATS);
      writeAxes(layer.data, i * FLOATS, object.dir, object);
      layer.data[i * FLOATS + 9] = object.peak;
      writeForm(layer.data, i * FLOATS + 10, object);
      layer.data[i * FLOATS + 14] = object.marginMag ?? STANDS_ALL_MAG;
    }
    if (count > 0) layer.buffer.update(count * FLOATS * 4);
  }
  layer.call.size = count > 0 ? 4 : 0;
  layer.call.instanceCount = count;
  issue(renderer, layer.call);
};
