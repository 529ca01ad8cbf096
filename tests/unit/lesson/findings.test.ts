import { describe, expect, it } from "vitest";
import { CATALOGUE, type FindingCode } from "#core/lesson/findings.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { BAD } from "./badExamples.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

const check = (text: string) => checkLesson("t.yaml", text, smallLookups);
/** The first line in which two texts differ, from 1. */
const firstChange = (text: string) => {
  const sound = SOUND.split("\n");
  return text.split("\n").findIndex((line, i) => line !== sound[i]) + 1;
};

it("finds nothing in a sound lesson", () => {
  const { lesson, findings } = check(SOUND);
  expect(findings).toEqual([]);
  expect(lesson).toMatchObject({ id: "t-01", drift: false, gear: { finderOffDeg: [0, 0] } });
  expect(lesson?.aids).toEqual({
    ring: "free",
    compass: "off",
    limits: "off",
    asInInstrument: "off",
    carry: "off",
    trail: "off",
    hints: "priced",
  });
});

describe("every code is found in its bad example", () => {
  it.each(Object.keys(CATALOGUE) as FindingCode[])("%s", (code) => {
    const { text, says } = BAD[code];
    const { lesson, findings } = check(text);
    const found = findings.find((each) => each.code === code);
    expect(findings.map((each) => `${each.code} ${each.message}`)).toContainEqual(expect.stringMatching(says));
    expect(found).toBeDefined();
    expect(found?.severity).toBe(CATALOGUE[code].severity);
    expect(found?.hint).not.toBe("");
    expect(lesson === undefined).toBe(findings.some(({ severity }) => severity === "error"));
  });
});

it("tells a lesson that counts beyond its course, and a second lesson in one file, in words for authors", () => {
  const beyond = SOUND.replace(/^number: .*$/m, "number: 90").replace(/^of: .*$/m, "of: 10");
  expect(check(beyond).findings).toEqual([expect.objectContaining({ code: "FW013", message: "number 90 of 10" })]);
  const { findings } = check(`${SOUND}\n---\n${SOUND}`);
  expect(findings).toEqual([
    expect.objectContaining({ code: "FW006", message: expect.stringMatching(/one file, one/) }),
  ]);
});

it("places every finding within the file, counted from 1", () => {
  for (const { text } of Object.values(BAD)) {
    const lines = text.split("\n");
    for (const { line, column } of check(text).findings) {
      expect(line).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(lines.length);
      expect(column).toBeGreaterThanOrEqual(1);
      expect(column).toBeLessThanOrEqual(lines[line - 1]!.length + 1);
    }
  }
});

it.each([
  "FW002",
  "FW003",
  "FW005",
  "FW011",
  "FW012",
  "FW013",
  "FW014",
  "FW020",
  "FW022",
  "FW037",
  "FW039",
  "FW040",
  "FW044",
  "FW046",
  "FW047",
  "FW048",
] as const)("%s stands on the line that was put wrong", (code) => {
  const { text } = BAD[code];
  const found = check(text).findings.find((each) => each.code === code);
  const expected =
    code === "FW037" ? SOUND.split("\n").findIndex((line) => line.includes("markReached")) + 1 : firstChange(text);
  expect(found?.line).toBe(expected);
});

it("asks whether a neighbour in spelling was meant", () => {
  const hintOf = (code: FindingCode) => check(BAD[code].text).findings.find((each) => each.code === code)?.hint;
  expect(hintOf("FW011")).toBe('Did you mean "minutes"?');
  expect(hintOf("FW014")).toBe('Did you mean "turn"?');
  expect(hintOf("FW020")).toBe('Did you mean "eye"?');
  expect(hintOf("FW022")).toBe('Did you mean "Bright"?');
  expect(hintOf("FW040")).toBe("Did you mean {shortFields}?");
});

it("tells all slips at once", () => {
  const text = SOUND.replace("minutes: 5", "minutes: 500").replace("level: C", "level: X").replace("claim:", "clam:");
  expect(check(text).findings.map(({ code }) => code)).toEqual(["FW013", "FW014", "FW010", "FW011"]);
});
