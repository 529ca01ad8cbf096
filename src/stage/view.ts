/** What the stage is asked to draw: plain data that the desk fills and reuses from frame to frame. */
import type { CloseStars } from "#core/field/closeStars.ts";
import type { BodyLook, ObjectLook } from "#core/field/objectLook.ts";
import type { Dir, Mat3, StarBlock } from "#core/seams/index.ts";

export type Lamp = "normal" | "red" | "amber";
export type Reticle = "none" | "cross" | "rings";
export type ViewProjection = "gnomonic" | "stereographic";
/** Colour as display values 0 .. 1 (sRGB), not as light. */
export type Rgb = readonly [red: number, green: number, blue: number];

/** Light within an ellipse: galaxies, clusters that do not resolve, nebulae. Open clusters are stars and need none. */
export interface FieldObject {
  readonly dir: Dir;
  /** Full axes on the sky, radians. */
  readonly majorRad: number;
  readonly minorRad: number;
  /** Position angle of the major axis, north through east, radians. */
  readonly axisRad: number;
  /** Brightness of the centre over the sky, display value; .15 to .35 as a rule, 0 hides it. */
  readonly peak: number;
  /** How its light lies; a plain soft ellipse without. */
  readonly look?: ObjectLook;
  /** By how much it lies above what the eye can tell; without one it stands any gaze. */
  readonly marginMag?: number;
}
/** Moon or planet as a disc: its picture is a square about it, `majorRad` wide, the middle of the lit limb along the axis. */
export interface FieldBody extends Omit<FieldObject, "look" | "marginMag"> {
  readonly look: BodyLook;
}
/** A thin white line from star to star, as the moment of agreement draws it. */
export interface FieldLine {
  readonly from: Dir;
  readonly to: Dir;
}
/** Where the ground and the Sun are; only views of the naked eye and the sight have them. */
export interface FieldHorizon {
  /** Row-major rotation of ICRS to x north, y west, z zenith. */
  readonly horizonFromIcrs: Mat3;
  readonly sunAltitudeRad: number;
  /** From north by east. */
  readonly sunAzimuthRad: number;
  /** By how much stars fall behind `limitMag` low down, 0.001 mag, as core/eye/lowAir.ts has it by the sine of the altitude; without it nothing. */
  readonly lossMilliMag?: ArrayLike<number>;
  /** What is left of the Milky Way's contrast with the night, likewise; without it all. */
  readonly glowContrast?: ArrayLike<number>;
  /** How much of that `limitMag` has in it already. */
  readonly lossInLimitMilliMag?: number;
}
/** How much the Milky Way brightens the night: triangles over the sky, as core/sky/glow/glowCells.ts makes them. */
export interface FieldGlow {
  readonly corners: Float32Array;
  readonly count: number;
}
/** The air that starlight comes through, at a moment. */
export interface FieldAir {
  /** From any beginning; only differences count, and few of them are as long as an hour. */
  readonly seconds: number;
  /** Relative scatter of a star's light at the zenith, rms. */
  readonly zenithScatter: number;
  /** Direction, ICRS. */
  readonly zenith: ArrayLike<number>;
}
/** What the vanes in a tube make of bright stars. */
export interface FieldSpikes {
  /** Way across the pointing to the top of the tube, ICRS: the vanes stand along it and across. */
  readonly top: ArrayLike<number>;
  /** By how much the middle of a spike is fainter to the eye than its star, mag. */
  readonly belowMag: number;
  /** Angle of a vane's first dark place, radians. */
  readonly vaneRad: number;
}
/** Where the eye looks, from the field's centre: x right, y up, CSS px. */
export interface FieldGaze {
  readonly xCssPx: number;
  readonly yCssPx: number;
  /** Radius of what is looked at straight. */
  readonly foveaCssPx: number;
  /** What a stare takes of the limit there; 0 looks about freely. */
  readonly lossMag: number;
  /** 0 .. 1: the eye looks beside whatever is faint. */
  readonly beside: number;
  /** What the eye lacks of its adaptation; `limitMag` is without it already. */
  readonly lackMag: number;
}
export interface FieldView {
  /** Row-major rotation of ICRS to the view: rows are right, up and forward as the eye gets them. */
  readonly viewFromIcrs: Mat3;
  readonly projection: ViewProjection;
  /** Radius of the field stop on the plane of the projection. */
  readonly planeRadius: number;
  readonly blocks: readonly StarBlock[];
  /** V of the star that is noticed half the time. */
  readonly limitMag: number;
  /** With it stars twinkle, and those about the limit come and go; without it each stands still at its mean. */
  readonly air: FieldAir | null;
  /** Null: the free gaze of an adapted eye. */
  readonly gaze: FieldGaze | null;
  /** Null or left out: no vanes. */
  readonly spikes?: FieldSpikes | null;
  /** How far out of focus a glass is: so many times a faint star's own width on the window more; 0 or left out is sharp. */
  readonly defocus?: number;
  /** Exponent of a star's brightness as drawn: less than 1 lifts the faintest, 1 or left out leaves them. */
  readonly starLift?: number;
  /** The least that a star at the limit gives however wide its image is, display value; 0 or left out holds it to none. */
  readonly starLeast?: number;
  /** Width of a star's image on the sky at half its brightness, radians; 0 is a point. */
  readonly starWidthRad: number;
  /** The sky at the centre of the field. */
  readonly skyRgb: Rgb;
  readonly lamp: Lamp;
  /** Greatest value of the red channel under a lamp, 0 .. 1: 170/255 as a rule, up to 235/255. */
  readonly lampLevel: number;
  readonly objects: readonly FieldObject[];
  /** Changes whenever `objects` does. */
  readonly objectsVersion: number;
  /** Stars that are drawn smaller, so that they stand apart; the first eight count. */
  readonly close?: readonly CloseStars[] | undefined;
  /** Discs of the solar system; another list whenever they change. */
  readonly bodies?: readonly FieldBody[];
  readonly reticle: Reticle;
  readonly horizon: FieldHorizon | null;
  /** Shown with a horizon alone; another object whenever it changes. */
  readonly glow: FieldGlow | null;
  /** Stars of an eyepiece are drawn a little larger. */
  readonly eyepiece: boolean;
  /** 1; towards 0 the field goes to black (a change of instrument opens out of it). */
  readonly light: number;
  /** By how much the field stop has opened, CSS px (a right claim opens it to 12). */
  readonly stopOpenCssPx: number;
  readonly lines: readonly FieldLine[];
  /** 0 .. 1. */
  readonly linesAlpha: number;
}
/** CSS px from the centre of the field to the canvas's sides. */
export interface Reach {
  readonly left: number;
  readonly right: number;
  readonly up: number;
  readonly down: number;
}

/** The canvas and what of it is field and rim, CSS px. */
export interface StageLayout {
  /** The canvas about the field's centre. */
  readonly reachCssPx: Reach;
  readonly devicePixelRatio: number;
  /** Radius of the field stop. */
  readonly fieldRadiusCssPx: number;
  /** Width of the barrel's ring around the field; 0 draws none. */
  readonly rimCssPx: number;
  /** Size of stars: 1, on phones .86. */
  readonly starScale: number;
}
