/** The picture of the field: what the session, the stars and the lamp are now, written into one object for the stage. */

import { DEG } from "#core/celestial/vector.ts";
import type { NightSky } from "#core/eye/nightSky.ts";
import { isGlow } from "#core/field/glows.ts";
import { objectLook, TAIL_REACH } from "#core/field/objectLook.ts";
import type { SeenField, SeenObject } from "#core/field/seenField.ts";
import { fieldRadiusPlane, projectionOf } from "#core/optics/viewFrame.ts";
import type { Dir, Gear, SkyObject } from "#core/seams/index.ts";
import { altAzOf, gearInUse, horizonOf, type Session, viewOf } from "#core/session/session.ts";
import type { FieldAir, FieldBody, FieldObject, FieldView } from "../../stage/index.ts";
import type { LampKind } from "../app/state.ts";
import type { Bodies } from "./bodies.ts";
import { skyShade } from "./limits.ts";
import type { Mutable } from "./mutable.ts";

export type Picture = Mutable<FieldView> & { readonly viewFromIcrs: Float64Array };

/** The sky at the centre of the field at its reference brightness, display values: in a glass, and open to the naked eye. */
const SKY_RGB = {
  glass: [27 / 255, 34 / 255, 43 / 255],
  open: [17 / 255, 22 / 255, 30 / 255],
} as const;
/** Brightness of a glow over the sky at the edge of what is seen, for each magnitude of margin, and at most. */
const PEAK = { least: 0.13, perMag: 0.09, most: 0.44 } as const;

/** Width of a star's image by the air, arcsec; 0 where the eye takes it for a point. */
const blurArcsecOf = ({ starWidthRad }: Picture) => (starWidthRad / DEG) * 3600;
/** What stands apart to the eye; null until its code is there. */
export type Apart = typeof import("#core/field/closeStars.ts").closeStars;
const NO_BODIES: readonly FieldBody[] = [];

export function createPicture(): Picture {
  return {
    viewFromIcrs: new Float64Array(9),
    projection: "gnomonic",
    planeRadius: 1,
    blocks: [],
    limitMag: 6,
    air: null,
    gaze: null,
    starWidthRad: 0,
    skyRgb: SKY_RGB.open,
    lamp: "normal",
    lampLevel: 170 / 255,
    objects: [],
    objectsVersion: 0,
    bodies: NO_BODIES,
    reticle: "none",
    horizon: null,
    glow: null,
    eyepiece: false,
    light: 1,
    stopOpenCssPx: 0,
    lines: [],
    linesAlpha: 0,
  };
}

/** How much wider than its listed size a thing is drawn. */
const drawnOver = ({ kind }: SkyObject) => (kind === "comet" ? TAIL_REACH : 1);

/** Glows of what is seen, with the brightness that their margin gives. */
export function glowsOf(objects: readonly SeenObject[], limitMag: number): FieldObject[] {
  return objects
    .filter(({ object }) => isGlow(object.kind))
    .map(({ object, marginMag }) => ({
      dir: object.dir,
      majorRad: (object.majorArcmin / 60) * DEG * drawnOver(object),
      minorRad: (object.minorArcmin / 60) * DEG * drawnOver(object),
      axisRad: object.axisDeg * DEG,
      peak: Math.min(PEAK.most, PEAK.least + PEAK.perMag * Math.max(0, marginMag)),
      look: objectLook(object, marginMag, limitMag),
      marginMag,
    }));
}

/** Neither the eye nor the sight has a wall about its field: the ground is in view, and sky on all sides. */
export const hasOpenSky = ({ kind }: Gear): boolean => kind === "eye" || kind === "sight";

/** What depends on the instrument alone: written when it changes. */
export function setGear(picture: Picture, gear: Gear, limitMag: number): void {
  picture.projection = projectionOf(gear);
  picture.planeRadius = fieldRadiusPlane(gear);
  picture.limitMag = limitMag;
  picture.reticle = gear.kind === "sight" ? "rings" : gear.kind === "finder" ? "cross" : "none";
  picture.eyepiece = gear.kind === "eyepiece";
}

const airNow: Mutable<FieldAir> & { readonly zenith: Float64Array } = {
  seconds: 0,
  zenithScatter: 0,
  zenith: new Float64Array(3),
};
/** The larger the exit pupil and the brighter the night, the brighter the sky in the field; air makes discs of stars. */
export function setSky(picture: Picture, gear: Gear, at: Dir, night: NightSky): void {
  const { id } = gear;
  picture.starWidthRad = (night.starWidthArcsec(at, id) / 3600) * DEG;
  airNow.zenithScatter = night.zenithScatter(id);
  const shade = skyShade(night.atTheEyeMu(at, id));
  const [r, g, b] = hasOpenSky(gear) ? SKY_RGB.open : SKY_RGB.glass;
  picture.skyRgb = [r * shade, g * shade, b * shade];
}

/** The air of a moment; null holds the stars still. Written before each frame; allocates nothing. */
export function setAir(picture: Picture, session: Session, seconds: number | null): void {
  picture.air = seconds === null ? null : airNow;
  if (seconds === null) return;
  const horizon = horizonOf(session);
  for (let i = 0; i < 3; i++) airNow.zenith[i] = horizon[6 + i]!;
  airNow.seconds = seconds;
}

export interface Sun {
  readonly altitudeRad: number;
  readonly azimuthRad: number;
}
const horizonNow = {
  horizonFromIcrs: new Float64Array(9) as ArrayLike<number>,
  sunAltitudeRad: -1,
  sunAzimuthRad: 0,
  lossMilliMag: [] as ArrayLike<number>,
  glowContrast: [] as ArrayLike<number>,
  lossInLimitMilliMag: 0,
};

/** The night's air: limits hold at the anchor's height, where the hop begins. */
export function setLowAir(night: NightSky, anchor: Dir): void {
  horizonNow.lossMilliMag = night.lossMilliMag;
  horizonNow.glowContrast = night.glowContrast;
  horizonNow.lossInLimitMilliMag = night.lossMilliMagAt(anchor);
}

/** Written before each frame; allocates nothing. */
export function setNow(
  picture: Picture,
  session: Session,
  seen: SeenField,
  lamp: LampKind,
  lampLevel: number,
  sun: Sun,
  bodies: Bodies | null,
  apart: Apart | null,
): void {
  viewOf(session, picture.viewFromIcrs);
  picture.blocks = seen.blocks;
  const discs = bodies?.discs ?? NO_BODIES;
  if (picture.objectsVersion !== seen.objectsVersion || picture.bodies !== discs) {
    picture.bodies = discs;
    picture.close = apart?.(seen.objects, bodies?.view() ?? null, gearInUse(session), blurArcsecOf(picture));
    picture.objects = glowsOf(seen.objects, seen.limitMilliMag / 1000);
    picture.objectsVersion = seen.objectsVersion;
  }
  picture.lamp = lamp;
  picture.lampLevel = lampLevel / 255;
  if (hasOpenSky(gearInUse(session))) {
    horizonNow.horizonFromIcrs = horizonOf(session);
    horizonNow.sunAltitudeRad = sun.altitudeRad;
    horizonNow.sunAzimuthRad = sun.azimuthRad;
    picture.horizon = horizonNow;
  } else picture.horizon = null;
}

/** Where a direction stands on the rim, clockwise from the top, degrees; `axis` is any vector across the view. */
export function rimDegOf(viewFromIcrs: ArrayLike<number>, axis: Dir): number {
  const x = viewFromIcrs[0]! * axis[0] + viewFromIcrs[1]! * axis[1] + viewFromIcrs[2]! * axis[2];
  const y = viewFromIcrs[3]! * axis[0] + viewFromIcrs[4]! * axis[1] + viewFromIcrs[5]! * axis[2];
  return (Math.atan2(x, y) / DEG + 360) % 360;
}

/** North and east across a direction, ICRS. */
export function compassAxes(at: Dir): { readonly north: Dir; readonly east: Dir } {
  const flat = Math.sqrt(at[0] * at[0] + at[1] * at[1]);
  const east: Dir = flat > 1e-9 ? [-at[1] / flat, at[0] / flat, 0] : [0, 1, 0];
  const north: Dir = [
    at[1] * east[2] - at[2] * east[1],
    at[2] * east[0] - at[0] * east[2],
    at[0] * east[1] - at[1] * east[0],
  ];
  return { north, east };
}

export const altitudeDegOf = (session: Session): number => altAzOf(session).altRad / DEG;
