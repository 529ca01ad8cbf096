/** What limits the view right now, as shares of one bar and as a sentence. */
import type { Costs } from "#core/eye/costs.ts";
import { say } from "../words/say.ts";

/** What costs limit: the model's causes, and for a while the light that the eye was in. */
export type Cause = keyof Costs | "light";
export interface LimitShare {
  readonly cause: Cause;
  /** Magnitudes of limit that it costs. */
  readonly mag: number;
}
/** In the order of the light's way: from the sky through the air and the glass to the eye. */
const ORDER: readonly Cause[] = ["skyGlow", "moon", "twilight", "altitude", "optics", "eye", "light"];
const NAME_KEY = {
  skyGlow: "play.limitSkyGlow",
  moon: "play.limitMoon",
  twilight: "play.limitTwilight",
  altitude: "play.limitAltitude",
  optics: "play.limitOptics",
  eye: "play.limitEye",
  light: "play.limitLight",
} as const satisfies Record<Cause, string>;
/** Less than this nobody notices (the eye tells stars apart from about a tenth on; common practice, no source). */
export const LEAST_MAG = 0.05;

export const causeName = (cause: Cause): string => say(NAME_KEY[cause]);

/**
 * The causes that count, in the order of the light's way, to 0.05 mag.
 * @param lackMag what the eye lacks of its adaptation
 */
export function limitShares(costs: Costs, lackMag = 0): readonly LimitShare[] {
  const all: Readonly<Record<Cause, number>> = { ...costs, light: lackMag };
  return ORDER.map((cause) => ({ cause, mag: Math.round(20 * all[cause]) / 20 })).filter(({ mag }) => mag >= LEAST_MAG);
}

/** "Most is lost to the glow of the sky, then to the optics." */
export function limitWords(shares: readonly LimitShare[]): string {
  const [first, second] = shares.toSorted((a, b) => b.mag - a.mag);
  if (!first) return say("play.limitNone");
  const one = causeName(first.cause);
  return second ? say("play.limitTwo", { one, two: causeName(second.cause) }) : say("play.limitOne", { one });
}

export const sameShares = (a: readonly LimitShare[], b: readonly LimitShare[]): boolean =>
  a.length === b.length && a.every(({ cause, mag }, i) => b[i]!.cause === cause && b[i]!.mag === mag);

/** Sky before the eye that the tones of the picture were made for, mag/arcsec2: a dark village sky and an exit pupil of 5.6 mm. */
const REFERENCE_MU = 21.5;
/** A sky ten times as bright is drawn by so much brighter: the eye adapts to most of it (fitted to the pictures). */
const PER_DEX = 0.3;
const SHADES = { least: 0.35, most: 2.2 } as const;

/** By how much the drawn sky differs from its reference at a brightness before the eye. */
export function skyShade(atTheEyeMu: number): number {
  const dex = 0.4 * (REFERENCE_MU - atTheEyeMu);
  return Math.min(SHADES.most, Math.max(SHADES.least, 1 + PER_DEX * dex));
}
