import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build, type Rollup } from "vite";
import { afterAll, beforeAll, expect, it } from "vitest";
import { checkLesson } from "#core/lesson/format.ts";
import { compileLessons, lessonPlugin } from "../../../src/tools/lessonPlugin.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "faintward-lessons-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

const check = (file: string, text: string) => checkLesson(file, text, smallLookups);

it("compiles a folder of lessons, in the order of their names", () => {
  writeFileSync(join(folder, "t-01.yaml"), SOUND);
  writeFileSync(join(folder, "t-00.yaml"), SOUND.replace("id: t-01", "id: t-00"));
  writeFileSync(join(folder, "notes.txt"), "not a lesson");
  expect(compileLessons(folder, check).map(({ id }) => id)).toEqual(["t-00", "t-01"]);
});

it("fails with every error and its place", () => {
  writeFileSync(join(folder, "t-00.yaml"), SOUND.replace("id: t-01", "id: t-02"));
  writeFileSync(join(folder, "t-01.yaml"), SOUND.replace("minutes: 5", "minutes: 500").replace("level: C", "level: X"));
  expect(() => compileLessons(folder, check)).toThrow(
    /t-02: rename[\s\S]*t-01\.yaml:7:10 FW013[\s\S]*t-01\.yaml:25:8 FW014/,
  );
});

it("gives the build plain data, without the parser", async () => {
  const entry = join(folder, "entry.js");
  writeFileSync(entry, 'import lessons from "virtual:lessons"; console.log(lessons);');
  const options = { write: false, minify: false, rolldownOptions: { input: entry } } as const;
  const built = (await build({
    configFile: false,
    logLevel: "silent",
    plugins: [lessonPlugin()],
    build: options,
  })) as Rollup.RollupOutput;
  const code = built.output.map((chunk) => ("code" in chunk ? chunk.code : "")).join("");
  expect(code).toContain("One step north");
  expect(code).toContain('"3-04s"');
  expect(code).not.toContain("parseDocument");
});
