/** The way as a list: legs, and the learner's own way cut at the marks. */
import { describe, expect, it } from "vitest";
import { dirFromMas, offsetDir } from "#core/celestial/vector.ts";
import { dearPart } from "#core/score/dearPart.ts";
import { dirsOfTrail } from "#core/score/places.ts";
import { score } from "#core/score/report.ts";
import type { AttemptRecord } from "#core/seams/index.ts";
import type { Facts } from "../../../src/desk/report/facts.ts";
import { legsOf } from "../../../src/desk/report/legs.ts";
import { placeInView, pushSeen, viewOfGear } from "../../../src/desk/steps/pushSeen.ts";
import { compiledHop, FIELD_DAS, mas, type Place, Writer } from "../score/attempts.ts";

const WAY: readonly Place[] = [
  [0, 0],
  [0, 0.8],
  [0.6, 1.4],
  [0.6, 2],
];
const factsOf = (record: AttemptRecord): Facts =>
  ({
    record,
    report: score(record),
    dirs: dirsOfTrail(record.trail),
    way: record.compiled.ways[0]!,
    dear: dearPart(record),
  }) as unknown as Facts;
const fields = (das: number | null) => (das === null ? null : das / FIELD_DAS);

describe("the way as a list", () => {
  it("gives each leg its own part of the trail; together they are the trail", () => {
    const record = new Writer(compiledHop(WAY))
      .to([0, 0.8])
      .to([0.6, 1.4])
      .to([0.6, 2.5])
      .to([0.6, 2])
      .claim()
      .record();
    const facts = factsOf(record);
    const legs = legsOf(facts);
    expect(legs.map(({ name }) => name)).toEqual(["mark 1", "mark 2", "mark 3"]);
    expect(legs.map(({ reached }) => reached)).toEqual([true, true, true]);
    expect(fields(legs[0]!.youDas)).toBeCloseTo(0.8, 1);
    expect(fields(legs[2]!.youDas)).toBeCloseTo(1.6, 1);
    const sum = legs.reduce((all, { youDas }) => all + youDas!, 0);
    expect(Math.abs(sum - facts.report.trailDas)).toBeLessThan(10);
    expect(Math.abs(legs.reduce((all, { parDas }) => all + parDas, 0) - facts.report.parDas)).toBeLessThan(3);
  });

  it("gives no figure to a mark that the trail never came past, and its length to the next one that it did", () => {
    const record = new Writer(compiledHop(WAY)).to([0.9, 0.4]).to([0.6, 1.4]).to([0.6, 2]).claim().record();
    const legs = legsOf(factsOf(record));
    expect(legs.map(({ reached }) => reached)).toEqual([false, true, true]);
    expect(legs[0]!.youDas).toBeNull();
    expect(fields(legs[1]!.youDas)).toBeCloseTo(Math.hypot(0.9, 0.4) + Math.hypot(0.3, 1), 1);
  });

  it("leaves the target unreached where it was not found", () => {
    const record = new Writer(compiledHop(WAY)).to([0, 0.8]).event({ kind: "giveUp" }).record();
    expect(legsOf(factsOf(record)).map(({ reached }) => reached)).toEqual([true, false, false]);
  });
});

describe("a push as an instrument shows it", () => {
  const { spec } = compiledHop(WAY);
  const anchor = dirFromMas(mas([0, 0]));
  it("goes the other way in a finder that turns by half than for the naked eye, in fields of each", () => {
    const north = offsetDir(anchor, 0, 0.01);
    const [eye, finder] = [pushSeen(spec, "sight", anchor, north), pushSeen(spec, "finder-9x50", anchor, north)];
    const turned = Math.atan2(eye.up, eye.right) - Math.atan2(finder.up, finder.right);
    expect(Math.cos(turned)).toBeCloseTo(-1, 3);
  });
  it("is one radius long for half a field", () => {
    const { right, up } = pushSeen(spec, "finder-9x50", anchor, dirFromMas(mas([0, 0.5])));
    expect(Math.hypot(right, up)).toBeCloseTo(1, 2);
  });
  it("starts in the middle of the view", () => {
    const place = placeInView(viewOfGear(spec, "finder-9x50", anchor), "finder-9x50", anchor);
    expect(Math.hypot(place.right, place.up)).toBeLessThan(1e-9);
  });
});
