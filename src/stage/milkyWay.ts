/** The Milky Way over the open sky of the naked eye and the sight: light that fades from corner to corner of a net on the sky. */
import { Buffer, BufferUsage, Geometry, Shader, UniformGroup, type WebGLRenderer } from "pixi.js";
import { atHeight, lowGlowDex } from "#core/eye/lowAir.ts";
import { GLOW_FLOATS } from "#core/sky/glow/glowFormat.ts";
import type { Frame } from "./frame.ts";
import { GAZE } from "./gaze.ts";
import { FRAME, PROJECT, programOf } from "./glsl.ts";
import { surfaceColour } from "./palette.ts";
import { type DrawCall, drawCall, issue } from "./renderer.ts";
import type { FieldGlow, FieldHorizon, FieldView } from "./view.ts";

/** A night twice as bright is drawn by so much brighter, for each factor of ten (fitted: a veil to the eye, no cloud). */
const PER_DEX = 3;
/** An eye that lacks so much of its adaptation sees none of it, mag (set by eye). */
const GONE_AT_MAG = 1.5;
const NONE = new Float32Array(3 * GLOW_FLOATS);
/** Cosine of a tenth of a degree: as far as the sky may turn before heights are taken anew. */
const STILL = Math.cos((0.1 * Math.PI) / 180);

export interface MilkyWayLayer {
  readonly call: DrawCall;
  readonly buffer: Buffer;
  /** How much each corner brightens the night at its height, dex. */
  readonly dexes: Buffer;
  readonly tint: Float32Array;
  drawn: FieldGlow | null;
  /** For which air and zenith (ICRS) the heights were taken. */
  contrast: ArrayLike<number> | undefined;
  readonly zenith: Float64Array;
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
  const dexes = new Buffer({ data: new Float32Array(3), usage: BufferUsage.VERTEX | BufferUsage.COPY_DST });
  const stride = GLOW_FLOATS * 4;
  const geometry = new Geometry({
    attributes: {
      aDir: { buffer, format: "float32x3", stride, offset: 0 },
      aCentre: { buffer, format: "float32x3", stride, offset: 12 },
      aDex: { buffer: dexes, format: "float32", stride: 4, offset: 0 },
    },
  });
  const tint = new Float32Array(3);
  const group = new UniformGroup({ uTint: { value: tint, type: "vec3<f32>" } });
  const glProgram = programOf("milky-way", [FRAME, PROJECT, GAZE, VERTEX], [FRAGMENT]);
  const shader = new Shader({ glProgram, resources: { frame: frame.group, milkyWay: group } });
  return {
    call: drawCall(geometry, shader, "add", "triangle-list"),
    buffer,
    dexes,
    tint: group.uniforms.uTint,
    drawn: null,
    contrast: undefined,
    zenith: new Float64Array(3),
  };
};

/** Low down the air dims the glow and the night is brighter: each corner by its height, anew when the sky has turned. */
const takeHeights = ({ buffer, dexes, contrast, zenith }: MilkyWayLayer): void => {
  const corners = buffer.data as Float32Array;
  const out = dexes.data as Float32Array;
  for (let i = 0, at = 0; i < out.length; i++, at += GLOW_FLOATS) {
    const sine = zenith[0]! * corners[at]! + zenith[1]! * corners[at + 1]! + zenith[2]! * corners[at + 2]!;
    const zenithDex = corners[at + 6]!;
    out[i] = contrast ? lowGlowDex(zenithDex, atHeight(contrast, sine)) : zenithDex;
  }
  dexes.update();
};
const isAsBefore = ({ contrast, zenith }: MilkyWayLayer, horizon: FieldHorizon): boolean => {
  const h = horizon.horizonFromIcrs;
  return contrast === horizon.glowContrast && zenith[0]! * h[6]! + zenith[1]! * h[7]! + zenith[2]! * h[8]! > STILL;
};

/** Draws the glow of a view, handed over anew when it is another. */
export const drawMilkyWay = (
  renderer: WebGLRenderer,
  layer: MilkyWayLayer,
  view: FieldView,
  horizon: FieldHorizon,
): void => {
  const { call, buffer, dexes, tint } = layer;
  const isNew = layer.drawn !== view.glow;
  if (isNew) {
    layer.drawn = view.glow;
    buffer.data = view.glow?.corners ?? NONE;
    call.size = view.glow?.count ?? 0;
    dexes.data = new Float32Array(buffer.data.length / GLOW_FLOATS);
  }
  if (isNew || !isAsBefore(layer, horizon)) {
    layer.contrast = horizon.glowContrast;
    for (let i = 0; i < 3; i++) layer.zenith[i] = horizon.horizonFromIcrs[6 + i]!;
    takeHeights(layer);
  }
  const [red, green, blue] = view.skyRgb;
  surfaceColour(red * PER_DEX, green * PER_DEX, blue * PER_DEX, view, tint);
  issue(renderer, call);
};
