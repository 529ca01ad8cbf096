/** The uniforms every layer shares: one group, its arrays written in place from frame to frame. */
import { UniformGroup } from "pixi.js";
import type { FieldView, StageLayout } from "./view.ts";

/** Width of the soft edge inside the field stop, CSS px. */
const SOFT_EDGE_CSS_PX = 7;
/** Stars of an eyepiece are so much larger. */
const EYEPIECE_STARS = 1.12;
/** How far the sky runs on past the rim where the instrument has no wall, CSS px. */
const SPILL_CSS_PX = 250;

export interface Frame {
  readonly group: UniformGroup;
  /** Side of the canvas and stop radius, device px. */
  readonly sidePx: number;
  readonly stopPx: number;
  /** Where lights end: the stop, or beyond everything where a mask does it. */
  readonly cutPx: number;
  readonly rimOuterPx: number;
  readonly spillPx: number;
  readonly pxPerCssPx: number;
  readonly softPx: number;
  readonly pxPerPlane: number;
  readonly pxPerStarUnit: number;
}

const structures = () => ({
  uView: { value: new Float32Array(9), type: "mat3x3<f32>" as const },
  /** Centre x and y, px per unit of the plane, half the canvas. */
  uField: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Stop radius as the lights are cut by it, soft edge. */
  uStop: { value: new Float32Array(2), type: "vec2<f32>" as const },
  /** Limit, px per star unit, 1 for stereographic, light. */
  uLook: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Greatest red, green and blue under a lamp, 1 where a lamp is lit. */
  uLamp: { value: new Float32Array(4), type: "vec4<f32>" as const },
});
type FrameUniforms = Record<keyof ReturnType<typeof structures>, Float32Array>;

type MutableFrame = { -readonly [K in keyof Frame]: Frame[K] };
const createFrameGroup = (): UniformGroup => new UniformGroup(structures()) as unknown as UniformGroup;

/** Share of the red channel that the green one gets under a lamp. */
export const greenShare = (lamp: FieldView["lamp"]): number => (lamp === "amber" ? 0.5 : 0);

/** A frame that nothing has been written to yet. */
export const createFrame = (): MutableFrame => ({
  group: createFrameGroup(),
  sidePx: 0,
  stopPx: 0,
  cutPx: 0,
  rimOuterPx: 0,
  spillPx: 0,
  pxPerCssPx: 1,
  softPx: 0,
  pxPerPlane: 1,
  pxPerStarUnit: 1,
});

/** Writes the uniforms of a view; `frame` is reused. Device px throughout. */
export const fillFrame = (frame: MutableFrame, view: FieldView, layout: StageLayout) => {
  const ratio = layout.devicePixelRatio;
  const half = Math.round(layout.canvasCssPx * ratio) / 2;
  frame.pxPerCssPx = ratio;
  frame.sidePx = half * 2;
  frame.stopPx = (layout.fieldRadiusCssPx + view.stopOpenCssPx) * ratio;
  frame.rimOuterPx = (layout.fieldRadiusCssPx + layout.rimCssPx) * ratio;
  frame.spillPx = view.horizon ? Math.max(0, Math.min(SPILL_CSS_PX * ratio, half - frame.rimOuterPx)) : 0;
  frame.softPx = SOFT_EDGE_CSS_PX * ratio;
  frame.pxPerPlane = (layout.fieldRadiusCssPx * ratio) / view.planeRadius;
  frame.pxPerStarUnit = ratio * layout.starScale * (view.eyepiece ? EYEPIECE_STARS : 1);
  frame.cutPx = view.horizon ? 4 * frame.sidePx : frame.stopPx;
  const u = frame.group.uniforms as FrameUniforms;
  u.uView.set(view.viewFromIcrs);
  u.uField[0] = half;
  u.uField[1] = half;
  u.uField[2] = frame.pxPerPlane;
  u.uField[3] = half;
  u.uStop[0] = frame.cutPx;
  u.uStop[1] = frame.softPx;
  u.uLook[0] = view.limitMag;
  u.uLook[1] = frame.pxPerStarUnit;
  u.uLook[2] = view.projection === "stereographic" ? 1 : 0;
  u.uLook[3] = view.light;
  u.uLamp[0] = view.lampLevel;
  u.uLamp[1] = view.lampLevel * greenShare(view.lamp);
  u.uLamp[2] = 0;
  u.uLamp[3] = view.lamp === "normal" ? 0 : 1;
};
