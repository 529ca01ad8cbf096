/** The sheet of a lesson's hop, printed by the code that prints the page's, and a learner who has it and nothing else. */
import { hopPage, pageCone, printPage } from "#core/chart/hopPages.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import { createRehearsal } from "#core/rehearsal/learner.ts";
import { taskOfPage } from "#core/rehearsal/task.ts";
import type { Rehearsal, RehearsalTask } from "#core/rehearsal/types.ts";
import type { StarSource } from "#core/seams/index.ts";
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import { practiceNames } from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource } from "#core/sky/practice/practiceSource.ts";
import { type Files, lessonCase } from "../../unit/desk/workerCases.ts";

export interface HopSheet {
  readonly lesson: Lesson;
  readonly page: ChartPage;
  readonly task: RehearsalTask;
  readonly learner: Rehearsal;
}

const never = new AbortController().signal;

async function blocksOf(source: StarSource, page: ChartPage) {
  const cone = pageCone(page);
  await source.want([...source.resident(cone, page.limitMag).missing], 0, never);
  return source.resident(cone, page.limitMag).blocks;
}

export async function hopSheet(id: string, files: Files): Promise<HopSheet> {
  const { lesson, compiled } = await lessonCase(id, files);
  const { sky } = lesson;
  const source =
    sky === "catalogue"
      ? createCatalogueSource({ fetchFile: (name) => files.sky(name) })
      : createPracticeSource(sky.practice);
  const names = sky === "catalogue" ? catalogueNames() : practiceNames(sky.practice);
  const page = hopPage(compiled, await blocksOf(source, hopPage(compiled, [])));
  const printed = { names, objects: realLookups.sky(lesson).objects };
  const words = { anchor: "anchor", target: "target" };
  const marks = printPage(page, compiled, printed, await blocksOf(source, page), { words, ways: false });
  const { hoppingGear, claimGear } = compiled.spec;
  const task = taskOfPage(page, marks, gearById(hoppingGear), gearById(claimGear));
  return { lesson, page, task, learner: createRehearsal(task) };
}
