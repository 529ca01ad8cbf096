/** What the workers are tried with, the same in Node and in a page: every method once with sense and once without. */
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { compileHop } from "#core/score/compile.ts";
import type { AttemptRecord, Call, CompiledAttempt, Resident } from "#core/seams/index.ts";
import { encodeRecord } from "#core/session/record.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { PRACTICE_LAYERS, practiceTileKey } from "#core/sky/practice/layers.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { playedWell } from "./playedWell.ts";
import { residentOf } from "./residentOf.ts";

/** Where the files are: each environment reads its own way. */
export interface Files {
  /** A file of assets/sky. */
  sky(name: string): Promise<ArrayBuffer>;
  /** A file of lessons. */
  lesson(name: string): Promise<string>;
}
export const LESSONS = ["1-01", "3-03", "3-04s"] as const;
export const SEED = 7;
const TILE_FILE = "stars-0.bin";

export interface LessonCase {
  readonly lesson: Lesson;
  readonly resident: Resident;
  readonly compiled: CompiledAttempt;
  readonly record: AttemptRecord;
}

/** A lesson checked, compiled and played by a hand that knows the way. @throws Error where it cannot be */
export async function lessonCase(id: string, files: Files): Promise<LessonCase> {
  const { lesson } = checkLesson(id, await files.lesson(`${id}.yaml`), realLookups);
  if (!lesson) throw new Error(`lesson ${id} has errors`);
  const spec = toHopSpec(lesson, 0, realLookups);
  const source =
    lesson.sky === "catalogue"
      ? createCatalogueSource({ fetchFile: (name) => files.sky(name) })
      : createPracticeSource(lesson.sky.practice);
  const seeing = realLookups.seeing(lesson);
  const resident = await residentOf(source, spec, seeing);
  const compiled = compileHop(spec, resident, seeing, SEED);
  if (!("ok" in compiled)) throw new Error(`tiles of lesson ${id} are missing`);
  return { lesson, resident, compiled: compiled.ok, record: playedWell(compiled.ok) };
}

export type WorkerCase = { readonly worker: "sky" | "thinking"; readonly method: string; readonly input: unknown };

export async function workerCases(files: Files): Promise<WorkerCase[]> {
  const { lesson, resident, compiled, record } = await lessonCase("1-01", files);
  const bytes = new Uint8Array(await files.sky(TILE_FILE));
  const compile = {
    spec: compiled.spec,
    blocks: resident.blocks,
    missing: [],
    place: lesson.place,
    objects: realLookups.sky(lesson).objects,
    seed: SEED,
  };
  const key = practiceTileKey(PRACTICE_LAYERS[1]!, 3);
  const yaml = await files.lesson("1-01.yaml");
  const sky = (method: string, input: unknown): WorkerCase => ({ worker: "sky", method, input });
  const thinking = (method: string, input: unknown): WorkerCase => ({ worker: "thinking", method, input });
  return [
    sky("generateTile", { seed: "sallow", key }),
    sky("generateTile", { seed: "", key }),
    sky("decodeTileFile", { bytes, name: TILE_FILE }),
    sky("decodeTileFile", { bytes: bytes.slice(0, -1), name: TILE_FILE }),
    sky("movingBodies", { utcMs: Date.UTC(2027, 7, 31, 21) }),
    sky("movingBodies", { utcMs: Number.NaN }),
    sky("solarSystem", { site: lesson.place, utcMs: Date.UTC(2027, 7, 31, 21) }),
    sky("solarSystem", { site: lesson.place, utcMs: Number.NaN }),
    sky("milkyWay", { sky: { kind: "practice", seed: "sallow" }, nightMu: 21 }),
    sky("milkyWay", { sky: { kind: "practice", seed: "" }, nightMu: 21 }),
    thinking("compile", compile),
    thinking("compile", { ...compile, missing: [key] }),
    thinking("compile", { ...compile, spec: { ...compiled.spec, hoppingGear: "finder-9x50" } }),
    thinking("score", { recordText: encodeRecord(record) }),
    thinking("score", { recordText: "{}" }),
    thinking("checkLesson", { file: "1-01.yaml", text: yaml }),
    thinking("checkLesson", { file: "bad.yaml", text: `${yaml}\nformat: 2\n` }),
  ];
}

/** Any plain data as one text, typed arrays as lists. */
export const told = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) => (ArrayBuffer.isView(one) ? Array.from(one as Float32Array) : one));

/** What a call gave, or how it failed, as one text. */
export const outcomeOf = (call: Call, { method, input }: WorkerCase): Promise<string> =>
  call(method, input).then(told, ({ name, message, code, hint }) => told({ failed: name, message, code, hint }));
