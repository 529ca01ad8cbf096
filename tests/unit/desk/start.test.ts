import { describe, expect, it } from "vitest";
import type { Lesson } from "#core/lesson/types.ts";
import type { FinishedAttempt } from "../../../src/desk/app/ports.ts";
import { courseOf, rimAngle } from "../../../src/desk/start/course.ts";
import { figureOf, linesOf } from "../../../src/desk/start/figures.ts";
import { startLayout } from "../../../src/desk/start/layout.ts";
import { dayWords } from "../../../src/desk/start/when.ts";

const lesson = (part: number, number: number, of: number, id = `${part}-0${number}`) =>
  ({ id, part, number, of, title: id, pass: { points: [70, 82, 92] } }) as unknown as Lesson;
const done = (lessonId: string, stars: 0 | 1 | 2 | 3): FinishedAttempt => ({
  id: `${lessonId} ${stars}`,
  lessonId,
  endedAtMs: 0,
  word: "found",
  points: 80,
  stars,
  recordText: "",
});
const LESSONS = [lesson(1, 1, 8), lesson(3, 3, 10), lesson(3, 4, 10), lesson(3, 4, 10, "3-04s")];

describe("the course", () => {
  it("has a place for every number of a part, and a lesson only where there is one", () => {
    const { parts } = courseOf(LESSONS, []);
    expect(parts.map(({ part, places }) => [part, places.length])).toEqual([
      [1, 8],
      [3, 11],
    ]);
    expect(parts[0]!.places.filter(({ lesson: own }) => own).map(({ number }) => number)).toEqual([1]);
    expect(parts[1]!.places.filter(({ lesson: own }) => own).map(({ number }) => number)).toEqual([3, 4, 4]);
  });
  it("has the next lesson's part in hand, and counts what has a dot", () => {
    expect(courseOf(LESSONS, []).inHand.part).toBe(1);
    const course = courseOf(LESSONS, [done("1-01", 1), done("3-03", 0)]);
    expect([course.inHand.part, course.next?.id, course.done, course.of]).toEqual([3, "3-03", 1, 4]);
  });
  it("stays in the last part where every lesson has a dot", () => {
    const all = LESSONS.map(({ id }) => done(id, 2));
    expect(courseOf(LESSONS, all)).toMatchObject({ next: null, inHand: { part: 3 }, done: 4 });
  });
  it("never lets a star go out", () => {
    const { parts } = courseOf(LESSONS, [done("1-01", 3), done("1-01", 0)]);
    expect(parts[0]!.places[0]!.stars).toBe(3);
  });
});

describe("figures and rim", () => {
  it("stand within the field, no two places too near to be told apart", () => {
    const all = [1, 2, 3, 4, 5].flatMap((part) => figureOf(part).places);
    for (const [i, a] of all.entries()) {
      expect(Math.hypot(...a)).toBeLessThan(0.92);
      for (const b of all.slice(i + 1)) expect(Math.hypot(a[0] - b[0], a[1] - b[1])).toBeGreaterThan(0.08);
    }
  });
  it("joins only places that are there", () => {
    for (const part of [1, 2, 3, 4, 5])
      for (const count of [1, 4, 12])
        for (const [from, to] of linesOf(figureOf(part), count)) {
          expect(Math.max(from, to)).toBeLessThan(count);
          expect(from).not.toBe(to);
        }
    expect(linesOf(figureOf(1), 8)).toHaveLength(7);
  });
  it("leaves the lowest part of the rim to words", () => {
    expect([rimAngle(0, 10), rimAngle(9, 10), rimAngle(0, 1)]).toEqual([-150, 150, 0]);
  });
});

describe("the start page's layout", () => {
  it.each([
    [1440, 900],
    [1920, 1080],
    [1280, 720],
    [1024, 768],
    [768, 1024],
    [390, 844],
    [320, 568],
  ])("keeps barrel and words apart and within %i x %i", (width, height) => {
    const { barrel, column, kind } = startLayout(width, height);
    const outer = barrel.fieldPx + barrel.rimPx;
    expect(barrel.x - outer).toBeGreaterThanOrEqual(0);
    expect(barrel.x + outer).toBeLessThanOrEqual(width);
    expect(column.left + column.width).toBeLessThanOrEqual(width);
    if (kind === "wide") expect(barrel.x + outer).toBeLessThan(column.left);
    else expect(barrel.y + outer).toBeLessThan(column.top);
  });
});

describe("days in words", () => {
  const now = new Date(2027, 10, 17, 21, 0).getTime();
  it.each([
    [new Date(2027, 10, 17, 0, 5), "today"],
    [new Date(2027, 10, 16, 23, 55), "yesterday"],
    [new Date(2027, 10, 12, 12, 0), "on Friday"],
    [new Date(2027, 10, 9, 12, 0), "on 9 November"],
  ])("%s is %s", (then, words) => expect(dayWords(then.getTime(), now)).toBe(words));
});
