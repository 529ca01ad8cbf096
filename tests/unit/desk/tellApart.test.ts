import { describe, expect, it } from "vitest";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { compileHop } from "#core/score/compile.ts";
import { createSession, stepEvent } from "#core/session/session.ts";
import type { Hop } from "../../../src/desk/play/hop.ts";
import { createLoading } from "../../../src/desk/play/loading.ts";
import { dailyId, seedOfId } from "../../../src/desk/seed/seedIds.ts";
import { seedLessonOf } from "../../../src/desk/seed/seedLessons.ts";
import { sideOf, tellApart } from "../../../src/desk/seed/tellApart.ts";
import { practiceWorld } from "../rehearsal/practiceHops.ts";
import { residentOf } from "./residentOf.ts";

async function hopOf(id: string): Promise<Hop> {
  const lesson = seedLessonOf(id)!;
  const { source } = practiceWorld(seedOfId(id).word);
  const spec = toHopSpec(lesson, 0, realLookups);
  const seeing = realLookups.seeing(lesson);
  const compiled = compileHop(spec, await residentOf(source, spec, seeing), seeing, 1);
  if (!("ok" in compiled)) throw new Error("tiles are missing");
  const session = createSession(compiled.ok);
  return { attempt: { session, compiled: compiled.ok }, loading: createLoading(source, () => {}) } as unknown as Hop;
}

describe("what tells a waymark of a generated hop apart", () => {
  it("is one sentence in the finder's own sides for a leg to a star, and nothing for the leg to the target", async () => {
    const hops = await Promise.all([0, 1, 2].map((day) => hopOf(dailyId(Date.UTC(2026, 10, 25 + day)))));
    const told = await Promise.all(hops.map((hop) => tellApart(hop)));
    const sentences = told.flatMap((tell) => [tell(0), tell(1)]).filter((words) => words !== "");
    expect(sentences.length).toBeGreaterThan(3);
    for (const words of sentences)
      expect(words).toMatch(
        /^Not the star (above|below|to the \w+( \w+)? of) .+ in the finder: that one (is|has|stands) [\w ]+\.$/,
      );
    expect(told.map((tell) => tell(2))).toEqual(told.map(() => ""));
  });

  it("turns with the sky: another hour, another side", async () => {
    const hop = await hopOf(dailyId(Date.UTC(2026, 10, 26)));
    const tell = await tellApart(hop);
    const before = tell(0);
    stepEvent(hop.attempt.session, { kind: "timeSet", toMs: hop.attempt.compiled.spec.startMs + 5 * 3_600_000 });
    expect(tell(0)).not.toBe(before);
    expect(tell(0).split(": ")[1]).toBe(before.split(": ")[1]);
  });

  it("names eight sides as the image has them", () => {
    const sides = [0, 45, 90, 135, 180, 225, 270, 315, 350].map((deg) =>
      sideOf({ right: Math.sin((deg * Math.PI) / 180), up: Math.cos((deg * Math.PI) / 180) }),
    );
    expect(sides).toEqual([
      "above",
      "upperRight",
      "right",
      "lowerRight",
      "below",
      "lowerLeft",
      "left",
      "upperLeft",
      "above",
    ]);
  });
});
