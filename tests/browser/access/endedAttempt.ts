/** An attempt that was played to its end by a hand that knows the way, as the logbook keeps it. */
import { score } from "#core/score/report.ts";
import { encodeRecord } from "#core/session/record.ts";
import type { FinishedAttempt } from "../../../src/desk/app/ports.ts";
import { type Files, lessonCase } from "../../unit/desk/workerCases.ts";

export async function endedAttempt(lessonId: string, files: Files): Promise<FinishedAttempt> {
  const { record } = await lessonCase(lessonId, files);
  const { word, points } = score(record);
  return { id: "ended", lessonId, endedAtMs: 1, word, points, stars: 3, recordText: encodeRecord(record) };
}
