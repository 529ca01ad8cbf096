/**
 * The sky over the session's site at the moment it stands at: the base rotation comes once from astronomy-engine, then the
 * ground spins about the pole of date at the sidereal rate. What astronomy-engine gives is rounded to 2^-36 (0.000003") so
 * that engines which differ in the last bit of a sine still step the same session.
 */
import { sunDir } from "#core/celestial/bodies.ts";
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import { equatorialOfDateFromIcrs, horizonFromIcrs, northPoleOfDate } from "#core/celestial/frames.ts";
import { mulMat, rotationAbout } from "#core/celestial/matrix.ts";
import { normalise, TWO_PI } from "#core/celestial/vector.ts";
import type { Dir, HopSpec, MountKind } from "#core/seams/index.ts";

/** Turns of the Earth against the stars in a mean solar day (IERS Conventions 2010, eq. 5.15). */
const TURNS_PER_DAY = 1.00273781191135;
const RAD_PER_MS = (TURNS_PER_DAY * TWO_PI) / 86_400_000;
/** The Sun goes 0.04 degrees an hour: a place so old is good enough. */
const SUN_KEEPS_MS = 600_000;
const GRID = 2 ** 36;

export interface SkyClock {
  readonly mount: MountKind;
  readonly latDeg: number;
  readonly lonDeg: number;
  baseMs: number;
  readonly baseHorizon: Float64Array;
  readonly baseFrame: Float64Array;
  pole: Dir;
  /** ICRS -> horizon and ICRS -> axes of the mount, now. */
  readonly horizon: Float64Array;
  readonly frame: Float64Array;
  atMs: number;
  sun: Dir;
  sunAtMs: number;
}

const onGrid = (x: number) => roundHalfUp(x * GRID) / GRID;

/** A clock at a hop's site that stands at `utcMs`. */
export function createSkyClock(spec: HopSpec, utcMs: number): SkyClock {
  const clock: SkyClock = {
    mount: spec.mount,
    latDeg: spec.siteMas[0] / 3_600_000,
    lonDeg: spec.siteMas[1] / 3_600_000,
    baseMs: utcMs,
    baseHorizon: new Float64Array(9),
    baseFrame: new Float64Array(9),
    pole: [0, 0, 1],
    horizon: new Float64Array(9),
    frame: new Float64Array(9),
    atMs: utcMs,
    sun: [1, 0, 0],
    sunAtMs: Number.NEGATIVE_INFINITY,
  };
  setClock(clock, utcMs);
  return clock;
}

/** Puts the clock to any instant, with fresh precession and nutation. */
export function setClock(clock: SkyClock, utcMs: number): void {
  const site = { latDeg: clock.latDeg, lonDeg: clock.lonDeg, heightM: 0 };
  clock.baseMs = utcMs;
  clock.baseHorizon.set(horizonFromIcrs(site, utcMs).map(onGrid));
  clock.baseFrame.set(
    clock.mount === "altazimuth" ? clock.baseHorizon : equatorialOfDateFromIcrs(site, utcMs).map(onGrid),
  );
  clock.pole = normalise(northPoleOfDate(clock.baseHorizon, clock.latDeg));
  clock.horizon.set(clock.baseHorizon);
  clock.frame.set(clock.baseFrame);
  clock.atMs = utcMs;
  renewSun(clock);
}

/** Lets the sky turn on to `utcMs`. */
export function turnClock(clock: SkyClock, utcMs: number): void {
  clock.atMs = utcMs;
  const spin = rotationAbout(clock.pole, -(utcMs - clock.baseMs) * RAD_PER_MS);
  mulMat(clock.baseHorizon, spin, clock.horizon);
  mulMat(clock.baseFrame, spin, clock.frame);
  if (Math.abs(utcMs - clock.sunAtMs) > SUN_KEEPS_MS) renewSun(clock);
}

function renewSun(clock: SkyClock): void {
  const [x, y, z] = sunDir(clock.atMs);
  clock.sun = normalise([onGrid(x), onGrid(y), onGrid(z)]);
  clock.sunAtMs = clock.atMs;
}

/** The zenith now, ICRS. */
export function zenithOfClock({ horizon }: SkyClock): Dir {
  return normalise([horizon[6]!, horizon[7]!, horizon[8]!]);
}
