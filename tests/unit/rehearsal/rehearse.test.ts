import { describe, expect, test } from "vitest";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { score } from "#core/score/report.ts";
import { record } from "#core/session/record.ts";
import { practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { practiceSpec, practiceWorld, rehearsed, specOf } from "./practiceHops.ts";

const HOPS = [
  { seed: "sallow", goal: "cluster", hopping: "binocular-10x50", claim: "binocular-10x50" },
  { seed: "sallow", goal: "galaxy", hopping: "finder-9x50", claim: "newton200-48x" },
  { seed: "heath", goal: "galaxy", hopping: "finder-9x50-mirror", claim: "catadioptric200-62x" },
  { seed: "fold", goal: "cluster", hopping: "finder-6x30", claim: "newton200-48x" },
  { seed: "briar", goal: "galaxy", hopping: "finder-9x50-erecting", claim: "newton150-30x", mount: "equatorial" },
  { seed: "lantern", goal: "galaxy", hopping: "finder-9x50-mirror", claim: "newton200-48x" },
] as const;

describe("a learner who sees field and page alone", () => {
  test.each(HOPS)("finds the $goal of $seed by $hopping", async (hop) => {
    for (const seed of [1, 2]) {
      const { session, moves } = await rehearsed(practiceSpec(hop), practiceWorld(hop.seed), { seed });
      const report = score(record(session));
      expect(report.word).toBe("found");
      expect(report.points).toBeGreaterThanOrEqual(90);
      expect(moves.length).toBeLessThan(20);
    }
  });

  test("finds a double star that the page has, and puts that star into the middle", async () => {
    const [objects, { stars }] = [practiceObjects("heath"), practiceNames("heath")];
    const legs = objects
      .filter(({ kind }) => kind === "doubleStar")
      .flatMap((double) => {
        const from = stars.find(({ dir, magV }) => {
          const apartDeg = separationRad(dir, double.dir) / DEG;
          return magV < 3.6 && apartDeg > 2 && apartDeg < 4;
        });
        return from ? [{ from, double }] : [];
      });
    expect(legs.length).toBeGreaterThan(5);
    for (const { from, double } of legs.slice(0, 3)) {
      const hop = { seed: "heath", hopping: "finder-9x50", claim: "newton200-48x" } as const;
      const { session } = await rehearsed(specOf(hop, from.dir, [], double), practiceWorld("heath"));
      expect(score(record(session)).word).toBe("found");
    }
  });

  test("finds its way again after a knock", async () => {
    const hop = { seed: "heath", goal: "galaxy", hopping: "finder-9x50", claim: "newton200-48x" } as const;
    for (const byDas of [
      [90_000, 0],
      [-60_000, 70_000],
    ] as const) {
      const knock = { atMs: 3500, byDas };
      const { session, outcomes } = await rehearsed(practiceSpec(hop), practiceWorld(hop.seed), { knock });
      expect(outcomes.some(({ kind }) => kind === "knocked")).toBe(true);
      expect(session.state.endReason).toBe("found");
    }
  });

  test("goes back once and then gives up where the page shows another sky, and claims nothing", async () => {
    const hop = { seed: "heath", goal: "galaxy", hopping: "finder-9x50", claim: "newton200-48x" } as const;
    const printed = practiceWorld("fold");
    const { session, moves } = await rehearsed(practiceSpec(hop), practiceWorld(hop.seed), { printed });
    const kinds = moves.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === "restart").length).toBe(1);
    expect(kinds.at(-1)).toBe("giveUp");
    expect(kinds).not.toContain("claim");
    expect(session.state.endReason).toBe("givenUp");
  });
});
