/** An attempt by a hand that knows the way: from mark to mark, pins where the tube points, a claim at the end. */
import { dirFromMas } from "#core/celestial/vector.ts";
import type { AttemptRecord, CompiledAttempt } from "#core/seams/index.ts";
import { record } from "#core/session/record.ts";
import { createSession } from "#core/session/session.ts";
import { onAnchor, pushTo, say } from "../session/hands.ts";

export function playedWell(compiled: CompiledAttempt): AttemptRecord {
  const { hoppingGear, claimGear, anchor, targets } = compiled.spec;
  const session = onAnchor(createSession(compiled), hoppingGear, anchor);
  for (const { dir } of compiled.ways[0]!.marks.slice(1)) {
    pushTo(session, dirFromMas(dir));
    say(session, { kind: "pin", at: dir });
  }
  if (claimGear !== hoppingGear) say(session, { kind: "use", gear: claimGear });
  pushTo(session, dirFromMas(targets[0]!.dir), 0.2);
  say(session, { kind: "claim", says: "here" });
  return record(session);
}
