import { describe, expect, it } from "vitest";
import { separationDas } from "#core/celestial/vector.ts";
import { score } from "#core/score/report.ts";
import { record } from "#core/session/record.ts";
import { createSession, pointingMas, type Session, type SessionEvent } from "#core/session/session.ts";
import { createChance } from "#core/sky/practice/chance.ts";
import { away, type Hearing, hop, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

const asked = (kinds: readonly { kind: string; which?: number }[]) =>
  kinds.filter(({ kind }) => kind === "pinAsked").map(({ which }) => which);

describe("pins are asked", () => {
  it("at the first rest after a third of par, and on leaving the finder for the eyepiece", () => {
    const session = onAnchor(createSession(hop()));
    expect(asked(pushTo(session, away(2, 300)).all)).toEqual([]);
    expect(asked(pushTo(session, away(3, 300)).all)).toEqual([1]);
    expect(asked(pushTo(session, TARGET).all)).toEqual([]);
    expect(asked(say(session, { kind: "use", gear: "newton200-48x" }).all)).toEqual([2]);
    say(session, { kind: "use", gear: "finder-9x50" });
    wait(session, 1000);
    expect(asked(say(session, { kind: "use", gear: "newton200-48x" }).all)).toEqual([]);
    say(session, { kind: "use", gear: "finder-9x50" });
    pushTo(session, away(5, 300));
    expect(asked(say(session, { kind: "use", gear: "newton200-48x" }).all)).toEqual([2]);
  });

  it("before the claim where one instrument does all; claiming again goes on without", () => {
    const compiled = hop({ gear: ["binocular-10x50"], hoppingGear: "binocular-10x50", claimGear: "binocular-10x50" });
    const session = onAnchor(createSession(compiled), "binocular-10x50");
    pushTo(session, TARGET);
    const first = say(session, { kind: "claim", says: "here" }).all;
    expect(first).toEqual([
      { kind: "pinAsked", which: 2 },
      { kind: "refused", why: "pinFirst" },
    ]);
    expect(session.events.some(({ kind }) => kind === "claim")).toBe(false);
    expect(say(session, { kind: "claim", says: "here" }).kinds()).toEqual(["claimed", "ended"]);
  });

  it("once in a hop shorter than a field, and never where pins weigh nothing", () => {
    const near = away(3, 300);
    const targets = [{ dir: near, sizeDas: 6000, objectId: "glow" }];
    const short = onAnchor(createSession(hop({ targets })));
    expect(separationDas(near, TARGET)).toBeGreaterThan(0);
    expect(asked(pushTo(short, near).all)).toEqual([]);
    expect(asked(say(short, { kind: "use", gear: "newton200-48x" }).all)).toEqual([2]);
    const none = onAnchor(createSession(hop({ weights: { directness: 80, pins: 0, care: 20 } })));
    const heard = pushTo(none, TARGET);
    say(none, { kind: "use", gear: "newton200-48x" }, heard);
    expect(asked(heard.all)).toEqual([]);
  });
});

describe("hints and aids", () => {
  it("are given where the hop allows them, and refused where it does not", () => {
    const session = onAnchor(createSession(hop()));
    expect(say(session, { kind: "hint", leg: 1, grade: 2 }).all).toEqual([{ kind: "hintGiven", leg: 1, grade: 2 }]);
    expect(say(session, { kind: "aid", aid: "carry", on: true }).all).toEqual([{ kind: "refused", why: "aidIsOff" }]);
    expect(say(session, { kind: "aid", aid: "ring", on: true }).all).toEqual([]);
    expect(say(session, { kind: "use", gear: "newton300-62x" }).all).toEqual([
      { kind: "refused", why: "notInTheList" },
    ]);
    const none = createSession(hop({ aids: { ...hop().spec.aids, hints: "off" } }));
    expect(say(none, { kind: "hint", leg: 0, grade: 1 }).all).toEqual([{ kind: "refused", why: "aidIsOff" }]);
  });
});

describe("who is asked and answers truly", () => {
  const answering = (session: Session) => {
    const answered = ({ all }: Hearing) => {
      for (const { kind } of all) {
        if (kind !== "pinAsked") continue;
        say(session, { kind: "pin", at: pointingMas(session) });
        wait(session, 40);
      }
    };
    return {
      say: (event: SessionEvent) => answered(say(session, event)),
      pushTo: (to: ReturnType<typeof away>, degPerS: number) => answered(pushTo(session, to, degPerS)),
    };
  };

  it.each([1, 2, 3, 4, 5, 6])("has all pins of the score, by whatever way the hop went: way %i", (way) => {
    const chance = createChance(way);
    const within = (low: number, high: number) => low + (high - low) * chance();
    const session = createSession(hop({ drift: way % 2 === 0, finderOffsetDas: [way > 3 ? 7200 : 0, -3600] }));
    const learner = answering(onAnchor(session));
    for (let leg = 0; leg < 3; leg++) {
      learner.pushTo(away(within(1, 8), 300 + within(-25, 25)), within(0.5, 3));
      if (chance() < 0.4) learner.say({ kind: "restart" });
      wait(session, within(100, 9000));
    }
    learner.pushTo(TARGET, 1);
    learner.say({ kind: "use", gear: "newton200-48x" });
    learner.pushTo(TARGET, 0.3);
    learner.say({ kind: "claim", says: "here" });
    const { word, lines } = score(record(session));
    expect([word, lines.find(({ what }) => what === "pins")?.points]).toEqual(["found", 30]);
  });
});
