/** What the thinking worker does: compiling, scoring, checking lessons. Everything comes in and goes out as plain data. */
import { type Place, seeingAt } from "#core/eye/eyeSeeing.ts";
import type { Finding } from "#core/lesson/findings.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { compileHop } from "#core/score/compile.ts";
import { score } from "#core/score/report.ts";
import type { CompiledAttempt, HopSpec, Report, SkyObject, StarBlock, TileKey } from "#core/seams/index.ts";
import { decodeRecord } from "#core/session/record.ts";
import { glowOfSky } from "#core/sky/glow/glowOfSky.ts";
import type { Methods, Running } from "./methods.ts";

export type CompileInput = {
  readonly spec: HopSpec;
  /** What is resident about the ways, and what was missing there. */
  readonly blocks: readonly StarBlock[];
  readonly missing: readonly TileKey[];
  /** The seeing as what it is made of: the place, the spec's instant, and the sky's objects. */
  readonly place: Place;
  readonly objects: readonly SkyObject[];
  readonly seed: number;
};
export type Compiled = { readonly ok: CompiledAttempt } | { readonly needs: readonly TileKey[] };
export type CheckInput = { readonly file: string; readonly text: string };
export type Checked = { readonly lesson?: Lesson | undefined; readonly findings: readonly Finding[] };

async function compile({ spec, blocks, missing, place, objects, seed }: CompileInput): Promise<Compiled> {
  const resident = { blocks, missing, complete: missing.length === 0, version: 0 };
  const seeing = seeingAt(place, spec.startMs, objects, { glowMuAt: await glowOfSky(spec.sky) });
  return compileHop(spec, resident, seeing, seed);
}

/**
 * The parser and the whole check come when a lesson is checked, and never without. Progress is told once, when the text has
 * been read and the sky is asked: what a text costs lies before that, what its sky costs behind.
 */
async function check({ file, text }: CheckInput, { progress }: Running): Promise<Checked> {
  const [{ checkLesson }, { realLookups }] = await Promise.all([
    import("#core/lesson/format.ts"),
    import("#core/lesson/realLookups.ts"),
  ]);
  let isRead = false;
  const tell = () => {
    if (!isRead) progress(1, 2);
    isRead = true;
  };
  return checkLesson(file, text, {
    ...realLookups,
    sky: (lesson) => {
      tell();
      return realLookups.sky(lesson);
    },
  });
}

export const thinkingMethods = {
  compile,
  /** @throws InputError where the text is no record, or one of other rules */
  score: ({ recordText }: { readonly recordText: string }): Report => score(decodeRecord(recordText)),
  checkLesson: check,
} satisfies Methods;
