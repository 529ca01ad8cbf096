/** An attempt left with the finder on something so faint that it comes and goes, unless the eye looks beside it. */
import { altAzFromDir } from "#core/celestial/frames.ts";
import { DEG } from "#core/celestial/vector.ts";
import { howSeen } from "#core/eye/margin.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { encodeRecord, record } from "#core/session/record.ts";
import { createSession } from "#core/session/session.ts";
import type { RunningAttempt } from "../../../src/desk/app/ports.ts";
import { type Files, lessonCase, SEED } from "../../unit/desk/workerCases.ts";
import { onAnchor, pushTo } from "../../unit/session/hands.ts";

const LESSON = "3-03";
const GEAR = "finder-9x50";
/** A galaxy, which has no star of its own: well within the class that comes and goes, and well above the horizon. */
const MARGIN_MAG = { from: 0.1, to: 0.35 } as const;
const LOWEST_RAD = 25 * DEG;

/** @throws Error where the sky of the lesson has nothing of that class */
export async function faintAttempt(files: Files): Promise<RunningAttempt> {
  const { lesson, compiled } = await lessonCase(LESSON, files);
  const session = onAnchor(createSession(compiled), GEAR, compiled.spec.anchor);
  const seeing = realLookups.seeing(lesson);
  const marginMag = (id: string) => seeing.object(id, GEAR).marginMilliMag / 1000;
  const faint = realLookups
    .sky(lesson)
    .objects.filter(({ id, kind, dir }) => {
      const within = marginMag(id) > MARGIN_MAG.from && marginMag(id) < MARGIN_MAG.to;
      return kind === "galaxy" && within && altAzFromDir(session.clock.horizon, dir).altRad > LOWEST_RAD;
    })
    .sort((a, b) => b.majorArcmin - a.majorArcmin)[0];
  if (!faint || howSeen(marginMag(faint.id)) !== "averted") throw new Error("nothing comes and goes here");
  pushTo(session, faint.dir);
  return { id: "faint", lessonId: LESSON, seed: SEED, savedAtMs: 1, recordText: encodeRecord(record(session)) };
}
