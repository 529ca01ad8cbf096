import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { CATALOGUE } from "#core/lesson/findings.ts";
import { MOMENTS } from "#core/lesson/schema.ts";
import { PLACEHOLDERS } from "#core/lesson/words.ts";

const guide = readFileSync(new URL("../../../lessons/README.md", import.meta.url), "utf8");

it("the guide for authors lists every finding as the check words it, and no other", () => {
  const rows = guide.split("\n").filter((line) => line.startsWith("| FW"));
  expect(rows).toEqual(
    Object.entries(CATALOGUE).map(
      ([code, { severity, title, hint }]) => `| ${code} | ${severity} | ${title} | ${hint} |`,
    ),
  );
});

it("the guide names every moment and every value", () => {
  for (const moment of MOMENTS) if (!/:[2-9]$/.test(moment)) expect(guide).toContain(`\`${moment}\``);
  for (const value of PLACEHOLDERS) expect(guide).toContain(`{${value}}`);
});
