/** Lesson files as a call's sky and night. */

import { bodiesOf } from "#core/lesson/bodies.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { LARGEST_BYTES } from "#core/lesson/largest.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { readText } from "./files.ts";
import { textOf } from "./findingsText.ts";
import type { Io } from "./io.ts";
import { openSky, type Sky, skyOf } from "./skies.ts";
import { UsageError } from "./usageError.ts";
import { siteOf, utcMsOf } from "./values.ts";

/** @throws UsageError with the first error of the file */
export async function readLesson(file: string): Promise<Lesson> {
  const { lesson, findings } = checkLesson(file, await readText(file, LARGEST_BYTES), realLookups);
  if (lesson) return lesson;
  const first = findings.find(({ severity }) => severity === "error")!;
  throw new UsageError("LESSON", textOf([first]), "mend the lesson first", {
    file,
    line: first.line,
    column: first.column,
  });
}

const isoOf = (utcMs: number) => new Date(utcMs).toISOString();

type Given = { readonly sky?: string; readonly lesson?: string };
/** Options that a lesson answers where the call does not. */
type Night = { readonly site?: string; readonly time?: string; readonly darkness?: string };

/** The sky that a lesson is hopped in, with the comets and minor planets that it brings along, where they stand then. */
function skyWith(lesson: Lesson, { site, time }: Required<Pick<Night, "site" | "time">>, io: Io): Sky {
  const sky = skyOf(realLookups.sky(lesson).ref, io);
  const place = { ...lesson.place, ...siteOf(site) };
  const all = [...sky.objects(), ...bodiesOf({ bodies: lesson.bodies, place, time: isoOf(utcMsOf(time)) })];
  return { ...sky, objects: () => all };
}

/**
 * The sky of `--sky`, or of the lesson of `--lesson`; then what the call leaves open is the lesson's: site, time, darkness.
 * @throws UsageError where both are given, or the lesson cannot be used
 */
export async function underSky<Options extends Given & Night>(
  options: Options,
  io: Io,
): Promise<{ readonly sky: Sky; readonly options: Options & Night }> {
  if (options.lesson === undefined) return { sky: openSky(options.sky, io), options };
  if (options.sky !== undefined)
    throw new UsageError("ARGUMENTS", "--sky and --lesson are given", "a lesson has its sky: keep one of them");
  const lesson = await readLesson(options.lesson);
  const { latDeg, lonDeg, heightM, skyMagPerArcsec2 } = lesson.place;
  const night = { site: `${latDeg},${lonDeg},${heightM}`, time: lesson.time, darkness: String(skyMagPerArcsec2) };
  const used = { ...night, ...options };
  return { sky: skyWith(lesson, used, io), options: used };
}
