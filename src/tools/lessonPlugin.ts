/**
 * `virtual:lessons`: every file of lessons/, checked and compiled to plain data when the page is built, so that no page
 * loads a parser for them. A finding that is an error fails the build and names its place.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type Plugin, runnerImport } from "vite";
import type { Finding } from "../core/lesson/findings.ts";
import type { checkLesson } from "../core/lesson/format.ts";
import type { realLookups } from "../core/lesson/realLookups.ts";
import type { Lesson } from "../core/lesson/types.ts";

const NAME = "virtual:lessons";
/** The leading zero byte keeps other plugins off. */
const RESOLVED = `\0${NAME}`;
const at = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const LESSONS = at("lessons");

type Check = (file: string, text: string) => ReturnType<typeof checkLesson>;

const said = ({ file, line, column, code, message, hint }: Finding) =>
  `${file}:${line}:${column} ${code} ${message}. ${hint}`;

const lessonFiles = (folder: string) =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".yaml"))
    .sort();

/**
 * The lessons of a folder in the order of their names.
 * @throws Error with every finding that is an error, one a line
 */
export function compileLessons(folder: string, check: Check): Lesson[] {
  const errors: string[] = [];
  const lessons: Lesson[] = [];
  for (const name of lessonFiles(folder)) {
    const { lesson, findings } = check(`lessons/${name}`, readFileSync(join(folder, name), "utf8"));
    errors.push(...findings.filter(({ severity }) => severity === "error").map(said));
    if (lesson && `${lesson.id}.yaml` !== name)
      errors.push(`lessons/${name} holds lesson ${lesson.id}: rename one of them`);
    if (lesson) lessons.push(lesson);
  }
  if (errors.length > 0) throw new Error(`lessons with errors:\n${errors.join("\n")}`);
  return lessons;
}

/** The core's own check, run through vite, which knows the aliases that Node does not. */
async function loadCheck(): Promise<Check> {
  const inlineConfig = {
    configFile: false as const,
    logLevel: "silent" as const,
    resolve: { alias: { "#core": at("src/core"), "#shared": at("shared") } },
  };
  type Core = { checkLesson: typeof checkLesson; realLookups: typeof realLookups };
  const { module: core } = await runnerImport<Core>(at("src/tools/lessonCheck.ts"), inlineConfig);
  return (file, text) => core.checkLesson(file, text, core.realLookups);
}

export function lessonPlugin(): Plugin {
  return {
    name: "faintward-lessons",
    resolveId: (id) => (id === NAME ? RESOLVED : null),
    async load(id) {
      if (id !== RESOLVED) return null;
      for (const name of lessonFiles(LESSONS)) this.addWatchFile(join(LESSONS, name));
      const lessons = compileLessons(LESSONS, await loadCheck());
      return `export default ${JSON.stringify(lessons)};`;
    },
  };
}
