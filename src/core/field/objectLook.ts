/** How an object lies before the eye: the form of its light, and what makes it itself. Nothing is decided by it. */
import { fnv1a32 } from "#core/celestial/hash.ts";
import type { SkyObject } from "#core/seams/index.ts";

/**
 * Form of the light of an object that glows. Disc and bulge are galaxies; granules a globular cluster that breaks up into
 * stars; plate and ring planetary nebulae; cloud and shell nebulae of gas, even or hollow, lamplit dust about stars; a
 * coma is the head of a comet with the tail that leaves it.
 */
export type LightForm = "disc" | "bulge" | "granules" | "plate" | "ring" | "cloud" | "shell" | "lamplit" | "coma";

export interface ObjectLook {
  readonly form: LightForm;
  /** 0 to 1, by the object's name: two of a kind are never the same. */
  readonly seed: number;
  /** Share of a globular cluster that stands out as single stars, 0 to 1; 0 for all else. */
  readonly resolved: number;
  /** Light of the faintest part that is made out, against the brightest part, 0 to 1. */
  readonly cut: number;
}

/** What a disc of the solar system shows: the Moon's face, a plain globe, belts, or belts and a ring; or its light about it. */
export type BodyForm = "moon" | "globe" | "banded" | "ringed" | "glow";

export interface BodyLook {
  readonly form: BodyForm;
  /** Share of the disc that is lit, 0 to 1. */
  readonly litShare: number;
  /** From the long axis of its picture to its north pole, through east, radians. */
  readonly poleRad: number;
  /** Sine of the height of the Earth over its equator, north positive. */
  readonly tilt: number;
  readonly colourBV: number;
}

/** A comet's tail is so many times as long as its head is wide from the middle: its picture reaches that far. */
export const TAIL_REACH = 4;
/** The brightest stars of a globular cluster are so much fainter than the whole (M 13, M 22, M 5; from memory). */
const GIANTS_BELOW_MAG = 6;
/** From its giants to where the multitude is out, mag (horizontal branch and below; from memory). */
const GIANTS_SPAN_MAG = 3.5;
/**
 * The brightest part lies so much over the mean that the margin judges, mag: over the mean of the form itself within half its
 * size, a little less for discs, whose hearts alone are judged under a bright sky (fitted by eye, no source).
 */
const CORE_OVER_MAG: Readonly<Record<LightForm, number>> = {
  disc: 1.1,
  bulge: 1.3,
  granules: 1,
  plate: 0.2,
  ring: 0.4,
  cloud: 0.9,
  shell: 0.4,
  lamplit: 0.8,
  coma: 1.3,
};

/** A name as a number from 0 to 1. */
function seedOf(id: string): number {
  const bytes = Array.from(id, (letter) => letter.charCodeAt(0));
  return ((fnv1a32(bytes) >>> 8) & 0xffff) / 0x10000;
}

function formOf({ kind, profile }: SkyObject): LightForm {
  switch (kind) {
    case "globularCluster":
      return "granules";
    case "planetaryNebula":
      return profile === "ring" ? "ring" : "plate";
    case "reflectionNebula":
      return "lamplit";
    case "comet":
      return "coma";
    case "galaxy":
      return profile === "bulge" ? "bulge" : "disc";
    default:
      return profile === "ring" ? "shell" : "cloud";
  }
}

/**
 * The look of an object in an instrument.
 * @param marginMag how far it lies above what the eye can tell
 * @param limitMag V of the faintest star that the instrument shows
 */
export function objectLook(object: SkyObject, marginMag: number, limitMag: number): ObjectLook {
  const form = formOf(object);
  const past = (limitMag - object.magV - GIANTS_BELOW_MAG) / GIANTS_SPAN_MAG;
  return {
    form,
    seed: seedOf(object.id),
    resolved: form === "granules" ? Math.min(1, Math.max(0, past)) : 0,
    cut: Math.min(0.8, 10 ** (-0.4 * (Math.max(0, marginMag) + CORE_OVER_MAG[form]))),
  };
}
