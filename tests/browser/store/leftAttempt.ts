/** An attempt as a closed tab left it: the anchor confirmed, a push made. */
import { dirFromMas, slerpDir } from "#core/celestial/vector.ts";
import { decodeRecord, encodeRecord, record } from "#core/session/record.ts";
import { createSession } from "#core/session/session.ts";
import type { RunningAttempt } from "../../../src/desk/app/ports.ts";
import { type Files, lessonCase, SEED } from "../../unit/desk/workerCases.ts";
import { onAnchor, pushTo } from "../../unit/session/hands.ts";

export async function leftAttempt(id: string, files: Files): Promise<RunningAttempt> {
  const { compiled } = await lessonCase(id, files);
  const { hoppingGear, anchor, targets } = compiled.spec;
  const session = onAnchor(createSession(compiled), hoppingGear, anchor);
  pushTo(session, slerpDir(dirFromMas(anchor), dirFromMas(targets[0]!.dir), 0.1));
  const recordText = encodeRecord(record(session));
  return { id: "left", lessonId: id, seed: SEED, savedAtMs: 1, recordText };
}

/** What can be told from a record without the core: its events and its trail, as one text each. */
export function told(recordText: string): { readonly events: string[]; readonly trail: string[] } {
  const { events, trail } = decodeRecord(recordText);
  const { tMs, raDas, decDas, byHand, mark } = trail;
  return {
    events: events.map((event) => JSON.stringify(event)),
    trail: Array.from(tMs, (ms, i) => [ms, raDas[i], decDas[i], byHand[i], mark[i]].join(" ")),
  };
}
