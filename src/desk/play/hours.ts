/**
 * A hop at another hour of its night. What is seen follows the sky of that hour, and the hop is compiled anew for it, beside
 * the page, before it starts: its record holds what was in force. The code comes when an hour is first set.
 */
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { dirFromMas } from "#core/celestial/vector.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Band, CompiledAttempt, HopSpec, Mark } from "#core/seams/index.ts";
import { compiledAnew, hourSet } from "#core/session/session.ts";
import { EN_HOURS } from "../words/en.hours.ts";
import { sayLater } from "../words/sayLater.ts";
import { createThinkingCall, type WorkerCall } from "../workers/createCalls.ts";
import type { Compiled, CompileInput } from "../workers/thinkingMethods.ts";
import { nightOf, starsToCompile } from "./attempt.ts";
import { timeWords } from "./conditions.ts";
import type { Hop } from "./hop.ts";
import type { HourTold } from "./model.ts";
import { settle } from "./outcomes.ts";
import { setLowAir } from "./picture.ts";
import { refreshGear } from "./refresh.ts";
import { milkyWayOver } from "./skies.ts";

const say = sayLater("hours", EN_HOURS);
/** So far from the lesson's hour "high in the south" still holds: the sky turns by 7.5 degrees (common practice, no source). */
const WORDS_HOLD_MS = 1_800_000;

let thinking: WorkerCall | null = null;

/** The same hop for a start at another instant, from beside the page. */
async function compiledAt(startMs: number, { lesson, sky, loading, attempt }: Hop): Promise<CompiledAttempt> {
  const spec: HopSpec = { ...attempt.compiled.spec, startMs };
  const { blocks } = await starsToCompile(spec, loading);
  const { place } = lesson;
  const input: CompileInput = { spec, blocks, missing: [], place, objects: sky.objects, seed: attempt.seed };
  thinking ??= createThinkingCall();
  const result: Compiled = await thinking.call("compile", input);
  if ("ok" in result) return result.ok;
  throw new Error("nothing was missing");
}

/** What of a hop is under the horizon at an hour: the anchor, the target, or nothing. */
export function markDown({ place }: Pick<Lesson, "place">, marks: readonly Mark[], utcMs: number): Mark | undefined {
  const horizon = horizonFromIcrs(place, utcMs);
  return [marks[0]!, marks.at(-1)!].find(({ dir }) => altAzFromDir(horizon, dirFromMas(dir)).altRad <= 0);
}

/** An hour of a lesson's night in words, and how to go back to the lesson's own. */
function hourWords({ place, time }: Pick<Lesson, "place" | "time">, utcMs: number) {
  const [own, now] = [Date.parse(time), utcMs].map((ms) => timeWords(ms, place.lonDeg)) as [string, string];
  return { own, now, back: say("back", { time: own }) };
}

/**
 * What has to be said of an hour; null where nothing has.
 * @param bands how the claim instrument shows the target, at the lesson's hour and at this one
 */
export function hourTold(
  lesson: Pick<Lesson, "place" | "time">,
  marks: readonly Mark[],
  utcMs: number,
  bands: readonly [lessons: Band, now: Band],
): HourTold | null {
  const { own, now: time, back } = hourWords(lesson, utcMs);
  const told = (words: string, isPossible = true): HourTold => ({ words, back, isPossible });
  const down = markDown(lesson, marks, utcMs);
  if (down) return told(say("down", { time, name: down.name }), false);
  if (bands[0] !== "not" && bands[1] === "not") return told(say("unseen", { time, name: marks.at(-1)!.name }));
  return Math.abs(utcMs - Date.parse(lesson.time)) > WORDS_HOLD_MS ? told(say("written", { time: own })) : null;
}

async function tell(hop: Hop, utcMs: number): Promise<void> {
  const { lesson, sky, attempt, signals } = hop;
  // In a look round nothing is sought, and the words name no place.
  if (hop.lookFrom) return;
  const { targets, claimGear } = attempt.compiled.spec;
  const lessons = await nightOf(lesson, sky, Date.parse(lesson.time));
  const bandBefore = lessons.seeing.object(targets[0]!.objectId, claimGear).band;
  const { marks } = attempt.compiled.ways[0]!;
  signals.hour.value = hourTold(lesson, marks, utcMs, [bandBefore, attempt.compiled.targetBands[0]!]);
}

async function move(hop: Hop, utcMs: number): Promise<void> {
  const { lesson, sky, attempt, picture } = hop;
  const night = await nightOf(lesson, sky, utcMs);
  const { session, compiled } = attempt;
  if (compiled.spec.startMs !== utcMs) {
    if (!compiledAnew(session, await compiledAt(utcMs, hop))) return;
    hop.keeper.changed(true);
  }
  attempt.night = night;
  setLowAir(night, dirFromMas(compiled.spec.anchor));
  refreshGear(hop);
  await tell(hop, utcMs);
  settle(hop);
  picture.glow = await milkyWayOver(compiled.spec.sky, night.zenithMu);
  hop.invalidate();
}

/**
 * Takes a hop to the hour that was set last.
 * @returns whether it can start at that hour
 */
export async function moveHop(hop: Hop): Promise<boolean> {
  const { lesson, attempt, signals } = hop;
  const utcMs = hourSet(attempt.session.events) ?? attempt.compiled.spec.startMs;
  try {
    await move(hop, utcMs);
    return signals.hour.value?.isPossible ?? true;
  } catch (error) {
    const { now: time, back } = hourWords(lesson, utcMs);
    const why = error instanceof Error ? error.message : String(error);
    signals.hour.value = { words: say("missing", { time, why }), back, isPossible: false };
    return false;
  }
}
