/** An attempt has ended: it is scored, kept for good, and its report opens. */
import { starsEarned } from "#core/lesson/pass.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { score } from "#core/score/report.ts";
import { encodeRecord, record } from "#core/session/record.ts";
import type { Attempt } from "../play/attempt.ts";
import type { Desk } from "./begin.ts";
import type { FinishedAttempt } from "./ports.ts";

/** Keeps a finished attempt. The points are noted for lists; a report always scores the record again. */
export async function finish(desk: Desk, lesson: Lesson, attempt: Attempt): Promise<FinishedAttempt> {
  const whole = record(attempt.session);
  const report = score(whole);
  const finished: FinishedAttempt = {
    id: attempt.id,
    lessonId: lesson.id,
    endedAtMs: Date.now(),
    word: report.word,
    points: report.points,
    stars: starsEarned(lesson.pass, report, whole),
    recordText: encodeRecord(whole),
  };
  await desk.store.addFinished(finished);
  await desk.store.clearRunning(attempt.id);
  desk.finished = [...desk.finished.filter(({ id }) => id !== finished.id), finished];
  return finished;
}
