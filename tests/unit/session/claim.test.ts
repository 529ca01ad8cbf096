import { describe, expect, it } from "vitest";
import { gearById } from "#core/optics/gear.ts";
import type { CompiledAttempt, MasDir, TargetSpec } from "#core/seams/index.ts";
import { judgeClaim } from "#core/session/claim.ts";
import { createSession } from "#core/session/session.ts";
import { away, hop, onAnchor, pushTo, say, TARGET, wait } from "./hands.ts";

const EYEPIECE = "newton200-48x";
const south = (at: MasDir, das: number): MasDir => ({ ...at, decMas: at.decMas - das * 100 });
const thing = (objectId: string, dir: MasDir, sizeDas = 0): TargetSpec => ({ dir, sizeDas, objectId });
const judge = (compiled: CompiledAttempt, off: number, says: "here" | "notSeen" = "here", gear = EYEPIECE) =>
  judgeClaim(compiled, south(TARGET, off), says, gear).verdict;

describe("judgeClaim", () => {
  it("is right to the tenth of an arcsecond within 0.35 of the radius, or 15' and half the size, whichever is less", () => {
    const narrow = hop({ targets: [thing("glow", TARGET, 6000)] });
    const reach = Math.floor((gearById(EYEPIECE).fieldDeg * 36_000 * 35) / 200);
    expect(reach).toBe(6930);
    expect([judge(narrow, reach), judge(narrow, reach + 1)]).toEqual(["right", "wrong"]);
    const wide = hop({ claimGear: "finder-9x50", targets: [thing("glow", TARGET, 6001)] });
    expect(judge(wide, 12_000, "here", "finder-9x50")).toBe("right");
    expect(judge(wide, 12_001, "here", "finder-9x50")).toBe("wrong");
  });

  it("is wrong where something else that can be seen lies nearer the middle, and the target where both lie alike", () => {
    const rivals = [thing("other", south(TARGET, 4000))];
    const compiled = hop({}, { rivals });
    expect([judge(compiled, 1999), judge(compiled, 2000), judge(compiled, 2001)]).toEqual(["right", "right", "wrong"]);
    expect(judgeClaim(compiled, south(TARGET, 3000), "here", EYEPIECE)).toMatchObject({
      nearestId: "other",
      offDas: 3000,
    });
  });

  it('takes "right place, nothing seen" only where the target is not plainly seen', () => {
    const says = (band: "seen" | "edge" | "not") => judge(hop({}, { targetBands: [band] }), 100, "notSeen");
    expect([says("seen"), says("edge"), says("not")]).toEqual(["wrong", "right", "right"]);
    expect(judge(hop({}, { targetBands: ["not"] }), 20_000, "notSeen")).toBe("wrong");
  });

  it("allows no claim in another instrument, and looks for the targets that are still to be found", () => {
    expect(judge(hop(), 0, "here", "finder-9x50")).toBe("notAllowed");
    const two = hop({ targets: [thing("one", TARGET), thing("two", south(TARGET, 3000))] });
    expect(judgeClaim(two, TARGET, "here", EYEPIECE)).toMatchObject({ verdict: "right", target: 0 });
    expect(judgeClaim(two, TARGET, "here", EYEPIECE, [0])).toMatchObject({ verdict: "right", target: 1 });
    expect(judgeClaim(two, TARGET, "here", EYEPIECE, [0, 1]).verdict).toBe("notAllowed");
  });
});

describe("claims in a session", () => {
  const atEyepiece = (at: MasDir, compiled = hop()) => {
    const session = onAnchor(createSession(compiled));
    pushTo(session, at);
    say(session, { kind: "use", gear: EYEPIECE });
    wait(session, 1000);
    return session;
  };

  it("need the claim's instrument and a rest in it", () => {
    const session = onAnchor(createSession(hop()));
    pushTo(session, TARGET);
    expect(say(session, { kind: "claim", says: "here" }).all).toEqual([{ kind: "refused", why: "otherGear" }]);
    say(session, { kind: "use", gear: EYEPIECE });
    expect(say(session, { kind: "claim", says: "here" }).all).toEqual([{ kind: "refused", why: "restFirst" }]);
    expect(wait(session, 780).kinds()).toEqual([]);
    expect(wait(session, 20).kinds()).toEqual(["rest"]);
    expect(say(session, { kind: "claim", says: "here" }).all).toEqual([
      { kind: "claimed", says: "here", verdict: "right", target: 0, wrongClaims: 0 },
      { kind: "ended", why: "found" },
    ]);
    expect(say(session, { kind: "giveUp" }).all).toEqual([{ kind: "refused", why: "ended" }]);
    expect(session.events.at(-1)!.kind).toBe("claim");
  });

  it("end the attempt with the third wrong one", () => {
    const session = atEyepiece(away(5, 300));
    const claim = () => say(session, { kind: "claim", says: "here" }).kinds();
    expect([claim(), claim(), claim()]).toEqual([["claimed"], ["claimed"], ["claimed", "ended"]]);
    expect(session.state.endReason).toBe("missed");
  });

  it("go on unscored once the line was shown", () => {
    const session = atEyepiece(away(5, 300));
    expect(say(session, { kind: "hint", leg: 0, grade: 3 }).kinds()).toEqual(["hintGiven", "shown"]);
    for (let i = 0; i < 4; i++) expect(say(session, { kind: "claim", says: "here" }).kinds()).toEqual(["claimed"]);
    expect(session.state.scored).toBe(false);
    pushTo(session, TARGET);
    expect(say(session, { kind: "claim", says: "here" }).kinds()).toEqual(["claimed", "ended"]);
  });

  it("find one target after the other", () => {
    const second = away(7.5, 300);
    const session = atEyepiece(TARGET, hop({ targets: [thing("one", TARGET), thing("two", second)] }));
    expect(say(session, { kind: "claim", says: "here" }).kinds()).toEqual(["claimed"]);
    pushTo(session, second);
    expect(say(session, { kind: "claim", says: "here" }).all[0]).toMatchObject({ verdict: "right", target: 1 });
    expect(session.state.endReason).toBe("found");
  });
});
