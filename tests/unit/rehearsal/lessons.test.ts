import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { checkLesson } from "#core/lesson/format.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { score } from "#core/score/report.ts";
import { record } from "#core/session/record.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { type HopWorld, practiceWorld, rehearsed } from "./practiceHops.ts";

const at = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const files = readdirSync(at("lessons")).filter((name) => name.endsWith(".yaml"));

function catalogueWorld(): Pick<HopWorld, "source" | "names"> {
  const fetchFile = async (name: string) => {
    const { buffer, byteOffset, byteLength } = readFileSync(at(`assets/sky/${name}`));
    return (buffer as ArrayBuffer).slice(byteOffset, byteOffset + byteLength);
  };
  return { source: createCatalogueSource({ fetchFile }), names: catalogueNames() };
}

async function lessonWorld(file: string, path: string): Promise<{ lesson: Lesson; world: HopWorld }> {
  const { lesson, findings } = checkLesson(file, readFileSync(at(path), "utf8"), realLookups);
  expect(findings.filter(({ severity }) => severity === "error")).toEqual([]);
  const { sky } = lesson!;
  const { objects } = realLookups.sky(lesson!);
  const own = typeof sky === "string" ? catalogueWorld() : practiceWorld(sky.practice);
  return { lesson: lesson!, world: { ...own, objects, seeing: realLookups.seeing(lesson!) } };
}

/** Does every hop of a lesson by field and page alone; a learner without slips earns nearly all. */
async function rehearseFile(file: string, path: string): Promise<void> {
  const { lesson, world } = await lessonWorld(file, path);
  for (const [i] of lesson.stages.entries()) {
    const { session } = await rehearsed(toHopSpec(lesson, i, realLookups), world);
    const report = score(record(session));
    expect(report.word).toBe("found");
    expect(report.points).toBeGreaterThanOrEqual(90);
  }
}

describe("every lesson that comes with the program", () => {
  test.each(files)("%s can be done by one who sees field and page alone", (file) =>
    rehearseFile(file, `lessons/${file}`),
  );
});

test("so can a hop to a comet of the lesson's own", () => rehearseFile("comet.yaml", "tests/unit/lesson/comet.yaml"));

test("and to a minor planet: a star that the page has not, where its sign stands", () =>
  rehearseFile("minorPlanet.yaml", "tests/unit/lesson/minorPlanet.yaml"));

test("who sees no such star says so", async () => {
  const { lesson, world } = await lessonWorld("minorPlanet.yaml", "tests/unit/lesson/minorPlanet.yaml");
  const without = { ...world, objects: world.objects.filter(({ kind }) => kind !== "minorPlanet") };
  const spec = toHopSpec(lesson, 0, realLookups);
  const { moves } = await rehearsed(spec, without, { printed: world });
  expect(moves.filter(({ kind }) => kind === "claim")[0]).toEqual({ kind: "claim", says: "notSeen" });
});
