/** By how much a thing that is no star lies above what the eye can tell from the sky, in magnitudes. */
import { exactPow10 } from "#core/celestial/exactMath.ts";
import { DEG } from "#core/celestial/vector.ts";
import type { Band, Gear, ObjectKind, SkyObject } from "#core/seams/index.ts";
import type { Conditions, SkyHere } from "./conditions.ts";
import { type AtTheEye, atTheEye, isNaked, type Optics, starLimits } from "./instrument.ts";
import { candelaOfMu, log10 } from "./light.ts";
import { enclosedLight } from "./profiles.ts";
import { discContrast } from "./threshold.ts";

export type Glass = Optics & Pick<Gear, "fieldDeg">;
export type Seen = Pick<SkyObject, "kind" | "magV" | "majorArcmin" | "minorArcmin" | "profile">;
/** The margin, and within how much of the listed size the eye sees it best. */
export type Margin = { readonly marginMag: number; readonly share: number };

const STEPS = 25;
const ARCMIN2_SR = (DEG / 60) * (DEG / 60);
/** The field must hold so much more than the part that is looked at (common practice, no source). */
const ROOM = 1.5;
/** Members of an open cluster grow with magnitude as 10^(0.28 m) (convention). */
const MEMBERS_SLOPE = 0.28;
/**
 * Its fifth star against the whole, mag, for 60 members over 5 mag: from about five on, stars make a cluster (convention).
 * Where the field holds but a part of it, the fifth star in view is fainter.
 */
const HANDFUL_BELOW = 3.3;
/** The model is no better than this, and magnitudes of emission nebulae are not. */
export const EDGE_MILLI_MAG = 400;
export const NEBULA_EDGE_MILLI_MAG = 700;
/** What gives no light of its own, or is unknown. */
export const NO_MARGIN_MAG = -99;
const DARK_FROM_MAG = 90;
/** Exit pupils through which the best power is sought, mm. */
const EXITS = { widestMm: 7, narrowestMm: 0.8, stepPower: 0.02 } as const;

/** What a margin is called. Emission nebulae and comets have a wider edge: their magnitudes are poorly defined. */
export function bandOf(marginMilliMag: number, kind?: ObjectKind): Band {
  const edge = kind === "emissionNebula" || kind === "comet" ? NEBULA_EDGE_MILLI_MAG : EDGE_MILLI_MAG;
  if (marginMilliMag > edge) return "seen";
  return marginMilliMag < -edge ? "not" : "edge";
}

export type How = "no" | "averted" | "held" | "direct";
/** How a thing is seen: it comes and goes beside the gaze, is held there, or stands a stare (fitted classes, no source). */
export function howSeen(marginMag: number): How {
  if (marginMag < 0) return "no";
  if (marginMag < 0.5) return "averted";
  return marginMag <= 1.5 ? "held" : "direct";
}

/** Best margin over the profile: the bright middle of a large thing is seen before the whole (threshold: Crumey 2014, eq. 41). */
export function patchMargin(object: Seen, eye: AtTheEye, { skyMu, lossMag }: SkyHere, fieldDeg: number): Margin {
  const { majorArcmin, minorArcmin, magV, profile } = object;
  const candela = candelaOfMu(skyMu) * eye.dimming;
  let best: Margin = { marginMag: NO_MARGIN_MAG, share: 1 / STEPS };
  for (let step = 1; step <= STEPS; step++) {
    const share = step / STEPS;
    if (step > 1 && ROOM * majorArcmin * share > 60 * fieldDeg) break;
    const light = enclosedLight(profile, share);
    const area = (Math.PI / 4) * majorArcmin * minorArcmin * share * share;
    const mu = magV - 2.5 * log10(light) + lossMag + 2.5 * log10(area * 3600);
    const apparentSr = area * ARCMIN2_SR * eye.magnification * eye.magnification;
    const marginMag = skyMu - mu - 2.5 * log10(discContrast(apparentSr, candela, eye.fieldFactor));
    if (marginMag > best.marginMag) best = { marginMag, share };
  }
  return best;
}

type Light = Pick<Conditions, "observer" | "seeingArcsec">;

/** Margin of an object in an instrument at its own magnification. */
export function objectMargin(object: Seen, glass: Glass, light: Light, here: SkyHere): number {
  if (object.magV > DARK_FROM_MAG) return NO_MARGIN_MAG;
  const limit = () => starLimits(glass, light, here).avertedMag;
  if (object.kind === "doubleStar" || object.kind === "minorPlanet") return limit() - object.magV;
  const eye = atTheEye(glass, light.observer, here.skyMu);
  const patch = patchMargin(object, eye, here, glass.fieldDeg).marginMag;
  if (object.profile !== "members") return patch;
  const beyond = Math.max(1, object.majorArcmin / (60 * glass.fieldDeg));
  return Math.max(patch, limit() - object.magV - HANDFUL_BELOW - (2 * log10(beyond)) / MEMBERS_SLOPE);
}

/** The same telescope with another eyepiece of the same apparent field. */
export const withPower = <G extends Glass>(glass: G, magnification: number): G => ({
  ...glass,
  magnification,
  fieldDeg: (glass.fieldDeg * glass.magnification) / magnification,
});

export type BestPower = { readonly marginMag: number; readonly magnification: number };

/** The power, exit pupils of 7 to 0.8 mm, at which an aperture shows an object best: the lowest of equals. */
export function bestPower(object: Seen, glass: Glass, light: Light, here: SkyHere): BestPower {
  if (isNaked(glass)) return { marginMag: objectMargin(object, glass, light, here), magnification: 1 };
  const low = glass.apertureMm / EXITS.widestMm;
  const steps = Math.ceil(log10(EXITS.widestMm / EXITS.narrowestMm) / EXITS.stepPower);
  let best: BestPower = { marginMag: Number.NEGATIVE_INFINITY, magnification: Math.max(1, low) };
  for (let i = 0; i <= steps; i++) {
    const magnification = Math.max(1, low * exactPow10(i * EXITS.stepPower));
    const marginMag = objectMargin(object, withPower(glass, magnification), light, here);
    if (marginMag > best.marginMag + 1e-9) best = { marginMag, magnification };
  }
  return best;
}
