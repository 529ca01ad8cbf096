/** From a lesson to a hop that can be played: an attempt taken up or begun, and what it left on the sheet laid out again. */

import { dirFromMas } from "#core/celestial/vector.ts";
import { InputError } from "#core/seams/errors.ts";
import { hourSet, viewOf } from "#core/session/session.ts";
import { setGaze, setTube } from "#core/session/tube.ts";
import { reducedMotion } from "../app/state.ts";
import { markName, say } from "../words/say.ts";
import { type Attempt, resumeAttempt, startAttempt } from "./attempt.ts";
import { followHour } from "./followHour.ts";
import { createHop, type Hop } from "./hop.ts";
import { createKeeper } from "./keep.ts";
import { nightHours, sunNow } from "./night.ts";
import { setLowAir } from "./picture.ts";
import { refreshGear } from "./refresh.ts";

/** What is there before an attempt is. */
export type Table = Pick<
  Hop,
  "lesson" | "signals" | "ports" | "sky" | "lookFrom" | "loading" | "steering" | "invalidate"
>;

/** The attempt that was left of this lesson; one that cannot be read is left alone, and a fresh one begins. */
async function takenUp({ lesson, ports, sky }: Table): Promise<Attempt | null> {
  const running = await ports.store.loadRunning(lesson.id);
  try {
    return running && (await resumeAttempt(lesson, sky, running, reducedMotion.value));
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return null;
  }
}

/** Pins, aids and the way the sheet lay, as the attempt's events have them. */
function layOutAgain({ signals, steering }: Table, { session }: Attempt): void {
  signals.pins.value = session.events.flatMap((event) => (event.kind === "pin" ? [{ at: dirFromMas(event.at) }] : []));
  const lain = session.events.findLast((event) => event.kind === "chartView");
  if (lain?.kind === "chartView") {
    const turned = { turnRad: lain.turnMilliRad / 1000, flipped: lain.flipped };
    signals.sheetView.value = { ...signals.sheetView.value, ...turned };
  }
  const carry = session.events.findLast((event) => event.kind === "aid" && event.aid === "carry");
  steering.carry = carry?.kind === "aid" && carry.on;
}

/**
 * Brings a hop about.
 * @param ended called once, with the hop, when the attempt has ended
 */
export async function startHop(table: Table, ended: (hop: Hop) => void): Promise<{ hop: Hop; resumed: boolean }> {
  const { lesson, signals, ports, sky, loading } = table;
  const resumed = await takenUp(table);
  const attempt = resumed ?? (await startAttempt(lesson, sky, loading, reducedMotion.value));
  if (resumed) layOutAgain(table, resumed);
  const { session, compiled } = attempt;
  if (table.lookFrom) {
    setGaze(session, table.lookFrom);
    setTube(session, table.lookFrom);
  }
  const hop: Hop = createHop(
    {
      ...table,
      attempt,
      keeper: createKeeper(ports.store, lesson.id, attempt),
      ended: () => ended(hop),
      sun: sunNow(session),
      night: nightHours(lesson),
    },
    (mark) => {
      signals.notice.value = say("hop.markReached", { mark: markName(mark) });
    },
  );
  viewOf(session, hop.picture.viewFromIcrs);
  setLowAir(attempt.night, dirFromMas(compiled.spec.anchor));
  refreshGear(hop);
  if (hourSet(session.events) !== null) followHour(hop);
  return { hop, resumed: resumed !== null };
}
