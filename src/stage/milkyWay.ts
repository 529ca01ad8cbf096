/** The Milky Way over the open sky of the naked eye and the sight: light that fades from corner to corner of a net on the sky. */
import { Buffer, BufferUsage, Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import { GLOW_FLOATS } from "#core/sky/glow/glowFormat.ts";
import type { Frame } from "./frame.ts";
import { GAZE } from "./gaze.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { surfaceColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import type { FieldGlow, FieldView } from "./view.ts";

/** A night twice as bright is drawn by so much brighter, for each factor of ten (fitted: a veil to the eye, no cloud). */
const PER_DEX = 3;
/** An eye that lacks so much of its adaptation sees none of it, mag (set by eye). */
const GONE_AT_MAG = 1.5;
const NONE = new Float32Array(3 * GLOW_FLOATS);

export interface MilkyWayLayer {
  readonly call: DrawCall;
  readonly buffer: Buffer;
  readonly tint: Float32Array;
  drawn: FieldGlow | null;
}

// Cells well behind the view are gathered outside of the window, whole: a triangle across the far side would cover it.
const VERTEX = `
in vec3 aDir;
in vec3 aCentre;
in float aDex;
uniform vec3 uTint;
out vec3 vLight;
void main() {
  gl_Position = NOWHERE;
  if (planeDivisor(viewOf(aCentre)) < .3) return;
  vLight = uTint * (aDex * uLook.w * max(0., 1. - uEye.y / ${GONE_AT_MAG.toFixed(1)}));
  gl_Position = clipOf(windowOf(viewOf(aDir)));
}`;
/** The stop is the mask's, laid over at the end: a pixel need not know where it is. */
const FRAGMENT = "in vec3 vLight; void main() { outColour = vec4(vLight, 1.); }";

export const createMilkyWayLayer = (frame: Frame): MilkyWayLayer => {
  const buffer = new Buffer({ data: NONE, usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
  const stride = GLOW_FLOATS * 4;
  const geometry = new Geometry({
    attributes: {
      aDir: { buffer, format: "float32x3", stride, offset: 0 },
      aCentre: { buffer, format: "float32x3", stride, offset: 12 },
      aDex: { buffer, format: "float32", stride, offset: 24 },
    },
  });
  const tint = new Float32Array(3);
  const group = new UniformGroup({ uTint: { value: tint, type: "vec3<f32>" } });
  const glProgram = programOf("milky-way", [FRAME, PROJECT, GAZE, VERTEX], [FRAGMENT]);
  const shader = new Shader({ glProgram, resources: { frame: frame.group, milkyWay: group } });
  return { call: drawCall(geometry, shader, "add", "triangle-list"), buffer, tint: group.uniforms.uTint, drawn: null };
};

/** Draws the glow of a view, handed over anew when it is another. */
export const drawMilkyWay = (renderer: WebGLRenderer, layer: MilkyWayLayer, view: FieldView): void => {
  const { call, buffer, tint } = layer;
  if (layer.drawn !== view.glow) {
    layer.drawn = view.glow;
    buffer.data = view.glow?.corners ?? NONE;
    call.size = view.glow?.count ?? 0;
  }
  const [red, green, blue] = view.skyRgb;
  surfaceColour(red * PER_DEX, green * PER_DEX, blue * PER_DEX, view, tint);
  issue(renderer, call);
};
