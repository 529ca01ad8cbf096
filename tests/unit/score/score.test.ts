import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { passes } from "#core/score/pass.ts";
import { score } from "#core/score/report.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Report } from "#core/seams/index.ts";
import { compiledHop, FIELD_DAS, type Place, Writer } from "./attempts.ts";

const NORTH: readonly Place[] = [
  [0, 0],
  [0, 1],
  [0, 2],
];
const line = (report: Report, what: string) => report.lines.find((one) => one.what === what)?.points ?? 0;
/** A hop that goes to the places in turn, pins truly at each rest, and claims at the last. */
const hop = (places: readonly Place[], marks = NORTH) => {
  const writer = new Writer(compiledHop(marks));
  for (const place of places) writer.to(place).pin();
  return writer.claim().record();
};
const directness = (places: readonly Place[], marks = NORTH) => line(score(hop(places, marks)), "directness");

describe("directness", () => {
  it("is whole for the straight way, in one push or in steps", () => {
    expect(directness([[0, 2]])).toBe(50);
    expect(
      directness([
        [0, 0.5],
        [0, 1],
        [0, 1.5],
        [0, 2],
      ]),
    ).toBe(50);
  });
  it("is whole for two legs by a mark that stands 30 degrees off the straight line", () => {
    const mark: Place = [0.58, 1];
    expect(directness([mark, [0, 2]], [[0, 0], mark, [0, 2]])).toBe(50);
  });
  it("forgives a nudge and back, to see which way the stars run", () => {
    expect(
      directness([
        [0.2, 0],
        [0, 0],
        [0, 2],
      ]),
    ).toBeGreaterThanOrEqual(48);
  });
  it("charges half a field the wrong way and back little, more a second time", () => {
    const once = directness([
      [0, -0.5],
      [0, 0],
      [0, 2],
    ]);
    expect(once).toBeGreaterThanOrEqual(40);
    expect(
      directness([
        [0, -0.5],
        [0, 0],
        [0, -0.5],
        [0, 0],
        [0, 2],
      ]),
    ).toBeLessThan(once);
  });
  it("does not forgive ten times there and back on one leg", () => {
    const forth = Array.from(
      { length: 10 },
      () =>
        [
          [0, 1],
          [0, 0],
        ] as Place[],
    ).flat();
    expect(directness([...forth, [0, 2]])).toBeLessThan(25);
  });
  it("lets a detour of up to half a hopping field inside the corridor go free", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.2, max: 1.8, noNaN: true }),
        fc.double({ min: -0.25, max: 0.25, noNaN: true }),
        (y, x) => {
          expect(
            directness([
              [0, y],
              [x, y],
              [0, y],
              [0, 2],
            ]),
          ).toBe(50);
        },
      ),
      { numRuns: 60 },
    );
  });
  it("counts a wiggle of the hand under a fiftieth of the field as none", () => {
    const shaky = Array.from({ length: 40 }, (_, i) => [(i % 2) * 0.008, 0.05 * (i + 1)] as Place);
    const writer = new Writer(compiledHop(NORTH));
    for (const place of shaky) writer.to(place, { rest: false });
    expect(line(score(writer.to([0, 2]).claim().record()), "directness")).toBe(50);
  });
});

describe("pins", () => {
  it("are full for one who knows where the tube points, nothing for silence", () => {
    expect(
      line(
        score(
          hop([
            [0, 1],
            [0, 2],
          ]),
        ),
        "pins",
      ),
    ).toBe(30);
    expect(line(score(new Writer(compiledHop(NORTH)).to([0, 1]).to([0, 2]).claim().record()), "pins")).toBe(0);
  });
  it("fall evenly from a tenth of the field to half of it", () => {
    const off = (fields: number) => {
      const writer = new Writer(compiledHop(NORTH)).to([0, 1]).pin([fields, 1]).to([0, 2]).pin([fields, 2]);
      return line(score(writer.claim().record()), "pins");
    };
    expect(off(0.09)).toBe(30);
    expect(off(0.3)).toBe(16);
    expect(off(0.51)).toBe(0);
  });
  it("ask once in a hop shorter than a field, and directness has the other's weight", () => {
    const marks: Place[] = [
      [0, 0],
      [0, 0.8],
    ];
    const report = score(hop([[0, 0.8]], marks));
    expect([line(report, "directness"), line(report, "pins"), line(report, "care")]).toEqual([65, 15, 20]);
  });
  it("of one moment with a restart tell of the place before it or of the anchor, by which came first", () => {
    const pins = (writer: Writer) => line(score(writer.to([0, 1]).to([0, 2]).pin().claim().record()), "pins");
    const there = () => new Writer(compiledHop(NORTH)).to([0, 1]);
    expect(pins(there().pin([0, 1]).restart())).toBe(30);
    const before = there();
    const goneBack = (place: Place) => {
      const writer = there().restart();
      writer.tMs -= 1000;
      writer.pin(place).tMs += 1000;
      return writer;
    };
    expect(pins(before.pin([0, 0]).restart())).toBe(15);
    expect(pins(goneBack([0, 0]))).toBe(15);
    expect(pins(goneBack([0, 1]))).toBe(15);
  });
  it("set blindly do not pass, even on the straightest way", () => {
    fc.assert(
      fc.property(fc.double({ min: -2, max: 2, noNaN: true }), fc.double({ min: -2, max: 4, noNaN: true }), (x, y) => {
        fc.pre(Math.hypot(x, y - 1) > 0.5 && Math.hypot(x, y - 2) > 0.5);
        const record = new Writer(compiledHop(NORTH)).to([0, 1]).pin([x, y]).to([0, 2]).pin([x, y]).claim().record();
        expect(passes(score(record), 70)).toBe(false);
      }),
      { numRuns: 60 },
    );
  });
});

describe("care", () => {
  const wrong = (writer: Writer) => writer.claim().event({ kind: "use", gear: "finder-9x50" });
  it("pays 10 for the first wrong claim, 20 for the second, and the third ends it", () => {
    const twice = wrong(wrong(new Writer(compiledHop(NORTH)).to([0, 1]).pin()))
      .to([0, 2])
      .pin()
      .claim()
      .record();
    expect(line(score(twice), "care")).toBe(-10);
    const thrice = wrong(wrong(wrong(new Writer(compiledHop(NORTH)).to([0, 1]))))
      .to([0, 2])
      .claim()
      .record();
    expect(score(thrice)).toMatchObject({ word: "missed", points: 0 });
  });
  it("pays 4 and 10 for hints, once a leg each; the third grade shows the way and counts nothing", () => {
    const hinted = new Writer(compiledHop(NORTH));
    for (const grade of [1, 1, 2, 2] as const) hinted.event({ kind: "hint", leg: 1, grade });
    expect(line(score(hinted.to([0, 2]).claim().record()), "care")).toBe(6);
    const shown = new Writer(compiledHop(NORTH)).event({ kind: "hint", leg: 1, grade: 3 }).to([0, 2]).claim().record();
    expect(score(shown)).toMatchObject({ word: "shown", points: null });
  });
  it("a restart is never below walking home from 1 to 3.5 fields away", () => {
    const place = fc.tuple(
      fc.double({ min: 1, max: 3.5, noNaN: true }),
      fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }),
    );
    fc.assert(
      fc.property(place, fc.double({ min: 1, max: 8, noNaN: true }), ([away, angle], par) => {
        const marks: Place[] = [
          [0, 0],
          [0, par],
        ];
        const lost: Place = [away * Math.sin(angle), away * Math.cos(angle)];
        const restarted = new Writer(compiledHop(marks)).to(lost).restart().to([0, par]).pin().claim().record();
        const walked = new Writer(compiledHop(marks)).to(lost).to([0, 0]).to([0, par]).pin().claim().record();
        expect(score(restarted).points!).toBeGreaterThanOrEqual(score(walked).points!);
      }),
      { numRuns: 200 },
    );
  });
});

describe("a restart in the moment of the last sample", () => {
  it("costs what the way home from that very place would, not from the sample before", () => {
    const lost = new Writer(compiledHop(NORTH)).to([0, -0.8], { fieldsPerS: 10, rest: false });
    expect(line(score(lost.restart().to([0, 2]).claim().record()), "care")).toBe(15);
  });
});

describe("the whole", () => {
  it("not found counts nothing and says how far it was", () => {
    const report = score(new Writer(compiledHop(NORTH)).to([0, 1.2]).event({ kind: "giveUp" }).record());
    expect(report).toMatchObject({ word: "givenUp", points: 0 });
    expect(report.shortByDas / FIELD_DAS).toBeCloseTo(0.8, 2);
  });
  it("a sweep in circles without a chart does not pass", () => {
    const circle = Array.from({ length: 60 }, (_, i) => {
      const angle = i * 0.5;
      return [0.055 * i * Math.sin(angle) * 0.65, 0.055 * i * Math.cos(angle) * 0.65] as Place;
    });
    const writer = new Writer(compiledHop(NORTH));
    for (const place of circle) writer.to(place, { rest: false });
    expect(passes(score(writer.to([0, 2]).claim().record()), 70)).toBe(false);
  });
  it("keeping a star centred against the sky's drift for five minutes costs nothing", () => {
    const writer = new Writer(compiledHop(NORTH)).to([0, 1]).pin();
    for (let i = 0; i < 60; i++) writer.to([0.004, 1], { byHand: 0, rest: false, fieldsPerS: 0.0008 }).to([0, 1]);
    const steady = score(writer.to([0, 2]).pin().claim().record());
    expect(line(steady, "directness")).toBe(50);
    expect(steady.trailDas / FIELD_DAS).toBeCloseTo(2, 1);
  });
  it("is the sum of its lines, in whole points from 0 to 100, over 10,000 attempts of every kind", () => {
    const place = fc.tuple(fc.double({ min: -4, max: 4, noNaN: true }), fc.double({ min: -4, max: 4, noNaN: true }));
    const act = fc.oneof(
      place.map((at) => (writer: Writer) => writer.to(at, { fieldsPerS: 4 })),
      place.map((at) => (writer: Writer) => writer.pin(at)),
      fc.constant((writer: Writer) => writer.claim()),
      fc.constant((writer: Writer) => writer.restart()),
      fc
        .constantFrom(1 as const, 2 as const)
        .map((grade) => (writer: Writer) => writer.event({ kind: "hint", leg: 1, grade })),
    );
    fc.assert(
      fc.property(
        fc.array(act, { maxLength: 6 }),
        fc.double({ min: 0.3, max: 5, noNaN: true }),
        fc.boolean(),
        (acts, par, arrives) => {
          const writer = new Writer(
            compiledHop([
              [0, 0],
              [0, par],
            ]),
          );
          for (const one of acts) one(writer);
          if (arrives) writer.to([0, par], { fieldsPerS: 4 }).claim();
          const { points, lines } = score(writer.record());
          expect(lines.reduce((sum, one) => sum + one.points, 0)).toBe(points);
          expect(lines.every((one) => Number.isInteger(one.points))).toBe(true);
          expect(points).toBeGreaterThanOrEqual(0);
          expect(points).toBeLessThanOrEqual(100);
        },
      ),
      { numRuns: 10_000 },
    );
  });
});

it("does not walk a trail that no hand could have made", () => {
  const good = hop([[0, 2]]);
  const count = 6000;
  // Half round the sky and back, six thousand times.
  const trail = {
    tMs: Int32Array.from({ length: count }, (_, i) => 200 * i),
    raDas: Int32Array.from({ length: count }, (_, i) => (i % 2) * 6_480_000),
    decDas: new Int32Array(count),
    byHand: new Uint8Array(count).fill(1),
    mark: new Uint8Array(count),
  };
  expect(() => score({ ...good, trail, events: [] })).toThrow(InputError);
});
