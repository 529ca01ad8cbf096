/** The uniforms every layer shares: one group, its arrays written in place from frame to frame. */
import { UniformGroup } from "pixi.js";
import { fillGaze } from "./gaze.ts";
import { surfaceColour } from "./palette.ts";
import { heightPxOf, SPILL_CSS_PX, widthPxOf } from "./reach.ts";
import { greenShare } from "./screenLight.ts";
import type { FieldView, StageLayout } from "./view.ts";

/** Width of the soft edge inside the field stop, CSS px. */
const SOFT_EDGE_CSS_PX = 7;
/** Stars of an eyepiece are so much larger. */
const EYEPIECE_STARS = 1.12;

export interface Frame {
  readonly group: UniformGroup;
  /** From the field's centre to the canvas's sides, device px, like all that follows: the centre stands at (leftPx, downPx). */
  readonly leftPx: number;
  readonly rightPx: number;
  readonly upPx: number;
  readonly downPx: number;
  /** A circle of this radius holds the whole canvas. */
  readonly farPx: number;
  readonly stopPx: number;
  /** Where lights end: the stop, or beyond everything where a mask does it. */
  readonly cutPx: number;
  readonly rimOuterPx: number;
  /** How far beyond the rim the open sky is gone. */
  readonly spillPx: number;
  readonly pxPerCssPx: number;
  readonly softPx: number;
  readonly pxPerPlane: number;
  readonly pxPerStarUnit: number;
}

const structures = () => ({
  uView: { value: new Float32Array(9), type: "mat3x3<f32>" as const },
  /** Centre x and y, px per unit of the plane. */
  uField: { value: new Float32Array(3), type: "vec3<f32>" as const },
  /** Of the clip space, for a px across and up. */
  uClip: { value: new Float32Array(2), type: "vec2<f32>" as const },
  /** Stop radius as the lights are cut by it, soft edge. */
  uStop: { value: new Float32Array(2), type: "vec2<f32>" as const },
  /** Limit, px per star unit, 1 for stereographic, light. */
  uLook: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Greatest red, green and blue under a lamp, 1 where a lamp is lit. */
  uLamp: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** What a light is multiplied by that is laid over the sky as a screen does: one over what the sky leaves. */
  uRoom: { value: new Float32Array(3), type: "vec3<f32>" as const },
  /** The sky at the centre in the light in use. */
  uSky: { value: new Float32Array(3), type: "vec3<f32>" as const },
  /** Where the gaze is, device px, how far it reaches, and what a stare takes, mag. */
  uGaze: { value: new Float32Array(4), type: "vec4<f32>" as const },
  /** Share of looking beside, what the eye lacks of its adaptation, mag; seconds, 1 where things come and go. */
  uEye: { value: new Float32Array(4), type: "vec4<f32>" as const },
});
type FrameUniforms = Record<keyof ReturnType<typeof structures>, Float32Array>;

type MutableFrame = { -readonly [K in keyof Frame]: Frame[K] };
const createFrameGroup = (): UniformGroup => new UniformGroup(structures()) as unknown as UniformGroup;

/** A frame that nothing has been written to yet. */
export const createFrame = (): MutableFrame => ({
  group: createFrameGroup(),
  leftPx: 0,
  rightPx: 0,
  upPx: 0,
  downPx: 0,
  farPx: 0,
  stopPx: 0,
  cutPx: 0,
  rimOuterPx: 0,
  spillPx: 0,
  pxPerCssPx: 1,
  softPx: 0,
  pxPerPlane: 1,
  pxPerStarUnit: 1,
});

/** Where the canvas lies about the centre. */
const fillReach = (frame: MutableFrame, layout: StageLayout) => {
  const { left, right, up, down } = layout.reachCssPx;
  const width = widthPxOf(layout);
  const height = heightPxOf(layout);
  frame.leftPx = (width * left) / (left + right);
  frame.rightPx = width - frame.leftPx;
  frame.downPx = (height * down) / (up + down);
  frame.upPx = height - frame.downPx;
  const across = Math.max(frame.leftPx, frame.rightPx);
  const along = Math.max(frame.upPx, frame.downPx);
  frame.farPx = Math.sqrt(across * across + along * along);
};

/** Writes the uniforms of a view; `frame` is reused. Device px throughout. */
export const fillFrame = (frame: MutableFrame, view: FieldView, layout: StageLayout) => {
  const ratio = layout.devicePixelRatio;
  frame.pxPerCssPx = ratio;
  fillReach(frame, layout);
  frame.stopPx = (layout.fieldRadiusCssPx + view.stopOpenCssPx) * ratio;
  frame.rimOuterPx = (layout.fieldRadiusCssPx + layout.rimCssPx) * ratio;
  const roomPx = Math.max(frame.leftPx, frame.rightPx, frame.upPx, frame.downPx) - frame.rimOuterPx;
  frame.spillPx = view.horizon ? Math.max(0, Math.min(SPILL_CSS_PX * ratio, roomPx)) : 0;
  frame.softPx = SOFT_EDGE_CSS_PX * ratio;
  frame.pxPerPlane = (layout.fieldRadiusCssPx * ratio) / view.planeRadius;
  frame.pxPerStarUnit = ratio * layout.starScale * (view.eyepiece ? EYEPIECE_STARS : 1);
  frame.cutPx = view.horizon ? 4 * frame.farPx : frame.stopPx;
  const u = frame.group.uniforms as FrameUniforms;
  u.uView.set(view.viewFromIcrs);
  u.uField[0] = frame.leftPx;
  u.uField[1] = frame.downPx;
  u.uField[2] = frame.pxPerPlane;
  u.uClip[0] = 2 / (frame.leftPx + frame.rightPx);
  u.uClip[1] = 2 / (frame.upPx + frame.downPx);
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
  // A light that is laid over the sky as a screen does is as bright as asked where it stands alone.
  for (let c = 0; c < 3; c++) u.uRoom[c] = view.lamp === "normal" ? 1 / Math.max(0.2, 1 - view.skyRgb[c]!) : 1;
  surfaceColour(view.skyRgb[0], view.skyRgb[1], view.skyRgb[2], view, u.uSky);
  fillGaze(u, frame, view);
};
