import { describe, expect, it } from "vitest";
import { dirFromMas } from "#core/celestial/vector.ts";
import { dearPart } from "#core/score/dearPart.ts";
import { distanceDas } from "#core/score/places.ts";
import { score } from "#core/score/report.ts";
import { compiledHop, FIELD_DAS, mas, type Place, Writer } from "./attempts.ts";

const MARKS: readonly Place[] = [
  [0, 0],
  [0, 2],
];
const hop = (...places: readonly Place[]) => {
  const writer = new Writer(compiledHop(MARKS));
  for (const place of places) writer.to(place);
  return writer.claim().record();
};
const partOf = (...places: readonly Place[]) => dearPart(hop(...places))!;
const fieldsFrom = (dir: ReturnType<typeof dirFromMas>, place: Place) =>
  distanceDas(dir, dirFromMas(mas(place))) / FIELD_DAS;

describe("the dear part of a way", () => {
  it("is none where the way was direct, or within what is free", () => {
    expect(dearPart(hop([0, 2]))).toBeNull();
    expect(dearPart(hop([0.3, 1], [0, 2]))).toBeNull();
  });
  it("is none where nothing moved", () => {
    expect(dearPart(new Writer(compiledHop(MARKS)).claim().record())).toBeNull();
  });
  it("of a way past the target and back begins where the target was passed and goes as far as the turn", () => {
    const part = partOf([0, 5], [0, 2]);
    expect(fieldsFrom(part.from, [0, 2])).toBeLessThan(0.1);
    expect(fieldsFrom(part.furthest, [0, 5])).toBeLessThan(0.1);
    expect(part.fromDas / FIELD_DAS).toBeCloseTo(2, 1);
    expect(part.furthestDas / FIELD_DAS).toBeCloseTo(5, 1);
    expect(part.toDas / FIELD_DAS).toBeCloseTo(8, 1);
    expect(part.outside).toBe(true);
  });
  it("of a detour to the side begins where the way was left and ends where it was regained", () => {
    const part = partOf([0, 1], [3, 1], [0, 1], [0, 2]);
    expect(fieldsFrom(part.from, [0, 1])).toBeLessThan(0.15);
    expect(fieldsFrom(part.furthest, [3, 1])).toBeLessThan(0.1);
    expect((part.toDas - part.fromDas) / FIELD_DAS).toBeCloseTo(6, 0);
  });
  it("of going to and fro between the marks lies within the corridor", () => {
    const part = partOf([0, 1.9], [0, 0.2], [0, 1.9], [0, 0.2], [0, 2]);
    expect(part.outside).toBe(false);
    expect(part.toDas - part.fromDas).toBeGreaterThan(4 * FIELD_DAS);
  });
  it("of a bent way begins at the mark where it was left, not where the way bends", () => {
    const marks: readonly Place[] = [
      [0, 0],
      [1, 1],
      [0, 2],
    ];
    const writer = new Writer(compiledHop(marks));
    for (const place of [
      [1, 1],
      [4, 1],
      [1, 1],
      [0, 2],
    ] as const)
      writer.to(place);
    const part = dearPart(writer.claim().record())!;
    expect(fieldsFrom(part.from, [1, 1])).toBeLessThan(0.15);
    expect(part.fromDas / FIELD_DAS).toBeCloseTo(Math.SQRT2, 0);
    expect((part.toDas - part.fromDas) / FIELD_DAS).toBeCloseTo(6, 0);
  });
  it("ends at a restart, whose step back has no length", () => {
    const record = new Writer(compiledHop(MARKS)).to([4, 0]).restart().to([0, 2]).claim().record();
    const part = dearPart(record)!;
    expect(fieldsFrom(part.from, [0, 0])).toBeLessThan(0.1);
    expect(fieldsFrom(part.furthest, [4, 0])).toBeLessThan(0.1);
    expect(part.toDas / FIELD_DAS).toBeCloseTo(4, 1);
  });
  it("lies within the way, whose length is the report's", () => {
    const record = hop([1, -2], [3, 3], [0, 2]);
    const part = dearPart(record)!;
    expect(part.fromDas).toBeLessThanOrEqual(part.furthestDas);
    expect(part.furthestDas).toBeLessThanOrEqual(part.toDas);
    expect(part.toDas).toBeLessThanOrEqual(part.wholeDas);
    expect(Math.abs(part.wholeDas - score(record).trailDas)).toBeLessThan(5);
  });
});
