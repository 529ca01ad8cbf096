/** The night of a hop: how high its target stands, and how light the sky is, from before sunset until after sunrise. */
import { moonDir, sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs, type Site } from "#core/celestial/frames.ts";
import { litFraction, moonPhaseAngleRad } from "#core/celestial/moonPhase.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
const STEP_MS = HOUR_MS / 12;
const MS_PER_DEG = 240_000;
const REACH_MS = 10 * HOUR_MS;
/** Shown before sunset and after sunrise. */
const ABOUT_MS = 0.75 * HOUR_MS;
/** The Sun's height when its upper edge sets, and where twilights end, degrees (textbook). */
export const SUN = { setDeg: -0.833, civilDeg: -6, nauticalDeg: -12, darkDeg: -18 } as const;

export interface Moment {
  readonly utcMs: number;
  readonly targetDeg: number;
  readonly sunDeg: number;
  readonly moonDeg: number;
}
export interface Night {
  readonly moments: readonly Moment[];
  /** Lit share of the Moon in the middle of the night. */
  readonly moonLit: number;
}

const momentAt = (site: Site, target: Dir, utcMs: number): Moment => {
  const horizon = horizonFromIcrs(site, utcMs);
  const height = (dir: Dir) => altAzFromDir(horizon, dir).altRad / DEG;
  return { utcMs, targetDeg: height(target), sunDeg: height(sunDir(utcMs)), moonDeg: height(moonDir(site, utcMs)) };
};

/**
 * The night about an instant, every five minutes: from three quarters of an hour before sunset until as long after sunrise;
 * twenty hours about local midnight where the Sun does not set or does not rise.
 * @param utcMs the local midnight nearest to it is the night's middle
 */
export function nightOf(site: Site, target: Dir, utcMs: number): Night {
  const offsetMs = site.lonDeg * MS_PER_DEG;
  const middleMs = Math.round((utcMs + offsetMs) / DAY_MS) * DAY_MS - offsetMs;
  const count = (2 * REACH_MS) / STEP_MS + 1;
  const all = Array.from({ length: count }, (_, i) => momentAt(site, target, middleMs - REACH_MS + i * STEP_MS));
  const down = all.filter(({ sunDeg }) => sunDeg < SUN.setDeg);
  const fromMs = (down[0]?.utcMs ?? middleMs - REACH_MS) - ABOUT_MS;
  const toMs = (down.at(-1)?.utcMs ?? middleMs + REACH_MS) + ABOUT_MS;
  const elongation = separationRad(sunDir(middleMs), moonDir(site, middleMs));
  return {
    moments: all.filter((one) => one.utcMs >= fromMs && one.utcMs <= toMs),
    moonLit: litFraction(moonPhaseAngleRad(elongation)),
  };
}

/** When the target stands highest in the dark; where it is never dark, when it stands highest; null where it never rises. */
export function bestMoment({ moments }: Night): { readonly moment: Moment; readonly dark: boolean } | null {
  const up = moments.filter(({ targetDeg }) => targetDeg > 0);
  const dark = up.filter(({ sunDeg }) => sunDeg < SUN.darkDeg);
  const among = dark.length > 0 ? dark : up.filter(({ sunDeg }) => sunDeg < SUN.setDeg);
  if (among.length === 0) return null;
  const moment = among.reduce((best, one) => (one.targetDeg > best.targetDeg ? one : best));
  return { moment, dark: dark.length > 0 };
}

/** Distance between upright lines for a height of the Sun, mm: their closeness is the tone; none in the dark. */
export function toneMm(sunDeg: number): number | null {
  if (sunDeg >= SUN.setDeg) return 0.5;
  if (sunDeg >= SUN.civilDeg) return 0.75;
  if (sunDeg >= SUN.nauticalDeg) return 1.2;
  return sunDeg >= SUN.darkDeg ? 1.9 : null;
}

/** Where upright lines stand along a night that is so many mm wide. */
export function toneLines({ moments }: Night, widthMm: number): number[] {
  const lines: number[] = [];
  const last = moments.length - 1;
  const sunAt = (mm: number) => moments[Math.min(last, Math.round((mm / widthMm) * last))]!.sunDeg;
  for (let mm = 0; mm <= widthMm; ) {
    const apart = toneMm(sunAt(mm));
    if (apart !== null) lines.push(mm);
    mm += apart ?? 0.5;
  }
  return lines;
}
