import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { score } from "#core/score/report.ts";
import type { AttemptRecord } from "#core/seams/index.ts";
import { decodeRecord, encodeRecord, record, signed } from "#core/session/record.ts";
import { createSession, type SessionEvent } from "#core/session/session.ts";
import { away, Hearing, hop, pushTo, say, TARGET } from "../session/hands.ts";

type Gaze = Extract<SessionEvent, { readonly kind: "avert" | "stare" | "torch" }>;
const gazes = fc.record({
  kind: fc.constantFrom("avert" as const, "stare" as const, "torch" as const),
  on: fc.boolean(),
});
/** So many places of the hop where the eye may do something. */
const PLACES = 11;

/** A hop with a wrong claim and a right one; between its steps the eye does what it is told to. */
function played(eye: readonly (readonly Gaze[])[]) {
  const session = createSession(hop());
  const heard = new Hearing();
  const steps: (() => Hearing)[] = [
    () => say(session, { kind: "use", gear: "sight" }, heard),
    () => pushTo(session, away(0.1, 0), 8, heard),
    () => say(session, { kind: "confirm" }, heard),
    () => say(session, { kind: "use", gear: "finder-9x50" }, heard),
    () => pushTo(session, TARGET, 0.8, heard),
    () => say(session, { kind: "use", gear: "newton200-48x" }, heard),
    () => say(session, { kind: "pin", at: TARGET }, heard),
    () => pushTo(session, away(7.4, 300), 0.2, heard),
    () => say(session, { kind: "claim", says: "here" }, heard),
    () => pushTo(session, TARGET, 0.2, heard),
    () => say(session, { kind: "claim", says: "here" }, heard),
  ];
  steps.forEach((step, i) => {
    for (const event of eye[i] ?? []) say(session, event, heard);
    step();
  });
  return { whole: record(session), heard: heard.all };
}
const withoutGaze = (whole: AttemptRecord) =>
  whole.events.filter(({ kind }) => kind !== "avert" && kind !== "stare" && kind !== "torch");

describe("looking beside, staring and torches", () => {
  it("change no score and no claim, wherever in a hop they come", () => {
    const plain = played([]);
    const verdicts = plain.heard.flatMap((one) => (one.kind === "claimed" ? [one.verdict] : []));
    expect(verdicts).toHaveLength(2);
    expect(verdicts.at(-1)).toBe("right");
    fc.assert(
      fc.property(fc.array(fc.array(gazes, { maxLength: 3 }), { minLength: PLACES, maxLength: PLACES }), (eye) => {
        const { whole, heard } = played(eye);
        expect(heard).toEqual(plain.heard);
        expect(withoutGaze(whole)).toEqual(plain.whole.events);
        expect(whole.trail).toEqual(plain.whole.trail);
        expect(score(whole)).toEqual(score(plain.whole));
      }),
      { numRuns: 25 },
    );
  });
  it("change no score of a record that has them at any moments, and come out of it again", () => {
    const plain = played([]).whole;
    const lastMs = plain.events.at(-1)!.tMs;
    const stamped = fc.tuple(gazes, fc.integer({ min: 0, max: lastMs }));
    fc.assert(
      fc.property(fc.array(stamped, { maxLength: 40 }), (added) => {
        const more = added.map(([event, tMs]) => ({ ...event, tMs }));
        // Stable: what has the same moment stays in its order.
        const events = [...more, ...plain.events].sort((a, b) => a.tMs - b.tMs);
        const whole = signed({ ...plain, events });
        expect(score(whole)).toEqual(score(plain));
        expect(decodeRecord(encodeRecord(whole)).events).toEqual(events);
      }),
    );
  });
});
