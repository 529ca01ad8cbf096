/** An attempt from its lesson: the sky opened, what is needed of it loaded, the hop compiled, the session begun or taken up. */
import { DEG, dirFromMas, normalise, separationRad } from "#core/celestial/vector.ts";
import { type NightSky, nightAt } from "#core/eye/nightSky.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { lookupOf } from "#core/lesson/skyLookup.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { CONTEXT_LIMIT_MILLI_MAG, compileHop } from "#core/score/compile.ts";
import { DataFileError, InputError } from "#core/seams/errors.ts";
import type { AttemptRecord, CompiledAttempt, Cone, HopSpec, Resident, Seeing, SkyRef } from "#core/seams/index.ts";
import { decodeRecord } from "#core/session/record.ts";
import { createSession, type Session } from "#core/session/session.ts";
import type { RunningAttempt } from "../app/ports.ts";
import type { Loading } from "./loading.ts";
import type { OpenSky } from "./skies.ts";

export interface Attempt {
  readonly id: string;
  readonly seed: number;
  readonly session: Session;
  /** As it stands in the session: another one where the hour was set. */
  readonly compiled: CompiledAttempt;
  readonly seeing: Seeing;
  /** The night at the hop's hour: brightness of the sky, and what limits the view. */
  night: NightSky;
}

const attemptOf = (id: string, seed: number, session: Session, night: NightSky): Attempt => ({
  id,
  seed,
  session,
  night,
  get compiled() {
    return session.compiled;
  },
  get seeing() {
    return this.night.seeing;
  },
});

/** The part of the sky that a hop goes through, with a field to spare. */
export function coneOfHop(spec: HopSpec, fieldDeg: number): Cone {
  const [anchor, target] = [dirFromMas(spec.anchor), dirFromMas(spec.targets[0]!.dir)];
  const centre = normalise([anchor[0] + target[0], anchor[1] + target[1], anchor[2] + target[2]]);
  return { centre, radiusRad: separationRad(anchor, target) / 2 + 1.5 * fieldDeg * DEG };
}

/** The night of a lesson's place under its sky, at any instant. */
export async function nightOf(lesson: Lesson, sky: OpenSky, utcMs: number): Promise<NightSky> {
  return nightAt(lesson.place, utcMs, sky.objects, { glowMuAt: await sky.glow() });
}

/**
 * The stars that compiling a hop needs. What could not be had is left out: the hop is played, and scored, without it.
 * @throws DataFileError where no star came
 */
export async function starsToCompile(spec: HopSpec, loading: Loading): Promise<Resident> {
  const stars = await loading.whole(coneOfHop(spec, 6), CONTEXT_LIMIT_MILLI_MAG / 1000 - 0.01);
  if (stars.blocks.length === 0) throw new DataFileError("No star of this sky came.", "Load the page again.");
  return { ...stars, missing: [] };
}

/** Compiles, loading what the compiler asks for. */
async function compiledFor(spec: HopSpec, seeing: Seeing, seed: number, loading: Loading): Promise<CompiledAttempt> {
  const result = compileHop(spec, await starsToCompile(spec, loading), seeing, seed);
  if ("ok" in result) return result.ok;
  throw new Error("nothing was missing");
}

/** A fresh attempt. */
export async function startAttempt(
  lesson: Lesson,
  sky: OpenSky,
  loading: Loading,
  reducedMotion: boolean,
): Promise<Attempt> {
  const night = await nightOf(lesson, sky, Date.parse(lesson.time));
  const seed = crypto.getRandomValues(new Uint32Array(1))[0]!;
  // The record names the sky whose stars are shown, which may be another than the lesson's.
  const lookup = lookupOf(sky.source.ref, sky.names, sky.objects, sky.places);
  const spec = { ...toHopSpec(lesson, 0, { sky: () => lookup }), sky: sky.source.ref };
  const compiled = await compiledFor(spec, night.seeing, seed, loading);
  return attemptOf(crypto.randomUUID(), seed, createSession(compiled, { reducedMotion }), night);
}

/** @throws InputError where a hop began under a practice sky of another version: its stars stand elsewhere now */
export function checkSameSky({ kind, skyVersion }: SkyRef, now: SkyRef): void {
  if (kind === "practice" && (now.kind !== kind || now.skyVersion !== skyVersion))
    throw new InputError("The hop was begun under an older practice sky.", "Begin it anew: its record stays as it is.");
}

/** Takes up an attempt where it was left. @throws InputError where its record cannot be read, or its sky is another now */
export async function resumeAttempt(
  lesson: Lesson,
  sky: OpenSky,
  running: RunningAttempt,
  reducedMotion: boolean,
): Promise<Attempt> {
  const resume: AttemptRecord = decodeRecord(running.recordText);
  const { compiled } = resume;
  checkSameSky(compiled.spec.sky, sky.source.ref);
  const session = createSession(compiled, { reducedMotion, resume });
  return attemptOf(running.id, running.seed, session, await nightOf(lesson, sky, compiled.spec.startMs));
}
