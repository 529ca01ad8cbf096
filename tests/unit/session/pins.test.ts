import { describe, expect, it } from "vitest";
import { separationDas } from "#core/celestial/vector.ts";
import { createSession } from "#core/session/session.ts";
import { away, hop, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

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
