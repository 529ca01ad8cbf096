/** The uniforms every layer shares: one group, its arrays written in place from frame to frame. */
import { UniformGroup } from "pixi.js";
import type { FieldView, StageLayout } from "./view.ts";

/** Width of the soft edge inside the field stop, CSS px. */
export const SOFT_EDGE_CSS_PX = 7;
/** How far the sky runs on past the rim where the instrument has no wall, CSS px. */
const SPILL_CSS_PX = 250;

export interface Frame {
  readonly group: UniformGroup;
  /** Side of the canvas and stop radius, device px. */
  readonly sidePx: number;
  readonly stopPx: number;
  readonly rimOuterPx: number;
  readonly spillPx: number;
  readonly pxPerCssPx: number;
}

const structures = () => ({
  uView: { value: new Float32Array(9), type: "mat3x3<f32>" as const },
  /** Centre x and y, px per unit of the plane, half the canvas. */
  uField: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Stop radius, soft edge, outer edge of the rim, width of what runs on past it. */
  uStop: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Limit, px per star unit, 1 for stereographic, light. */
  uLook: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Greatest red, green and blue under a lamp, 1 where a lamp is lit. */
  uLamp: { value: new Float32Array(4), type: "vec4<f32>" as const },
});
type FrameUniforms = Record<keyof ReturnType<typeof structures>, Float32Array>;

export const createFrameGroup = (): UniformGroup => new UniformGroup(structures()) as unknown as UniformGroup;

/** Share of the red channel that the green one gets under a lamp. */
export const greenShare = (lamp: FieldView["lamp"]): number => (lamp === "amber" ? 0.5 : 0);

/** Writes the uniforms of a view; `frame` is reused. Device px throughout. */
export const fillFrame = (frame: { -readonly [K in keyof Frame]: Frame[K] }, view: FieldView, layout: StageLayout) => {
  const ratio = layout.devicePixelRatio;
  const half = Math.round(layout.canvasCssPx * ratio) / 2;
  frame.pxPerCssPx = ratio;
  frame.sidePx = half * 2;
  frame.stopPx = (layout.fieldRadiusCssPx + view.stopOpenCssPx) * ratio;
  frame.rimOuterPx = (layout.fieldRadiusCssPx + layout.rimCssPx) * ratio;
  frame.spillPx = view.horizon ? Math.max(0, Math.min(SPILL_CSS_PX * ratio, half - frame.rimOuterPx)) : 0;
  const u = frame.group.uniforms as FrameUniforms;
  u.uView.set(view.viewFromIcrs);
  u.uField[0] = half;
  u.uField[1] = half;
  u.uField[2] = (layout.fieldRadiusCssPx * ratio) / view.planeRadius;
  u.uField[3] = half;
  u.uStop[0] = frame.stopPx;
  u.uStop[1] = SOFT_EDGE_CSS_PX * ratio;
  u.uStop[2] = frame.rimOuterPx;
  u.uStop[3] = frame.spillPx;
  u.uLook[0] = view.limitMag;
  u.uLook[1] = ratio * layout.starScale * (view.eyepiece ? 1.12 : 1);
  u.uLook[2] = view.projection === "stereographic" ? 1 : 0;
  u.uLook[3] = view.light;
  u.uLamp[0] = view.lampLevel;
  u.uLamp[1] = view.lampLevel * greenShare(view.lamp);
  u.uLamp[2] = 0;
  u.uLamp[3] = view.lamp === "normal" ? 0 : 1;
};
