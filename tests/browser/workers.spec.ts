/** The real workers of the built page answer as the same code does inline. */
import { expect } from "@playwright/test";
import { openGolden, test } from "./golden/goldenPage.ts";

test("every method answers in its worker as it does inline, errors included", async ({ page, goldenAddress }) => {
  await openGolden(page, goldenAddress);
  const answers = await page.evaluate(() => window.goldenPage.parity());
  for (const { method, inline, worker } of answers) expect(worker, method).toBe(inline);
  const failed = answers.filter(({ inline }) => inline.startsWith('{"failed"'));
  expect(new Set(answers.map(({ method }) => method)).size).toBe(8);
  expect(failed.length).toBeGreaterThan(2);
  expect(await page.evaluate(() => window.goldenPage.violations)).toEqual([]);
});

test("a cancelled call is given up and the next one answered; an ended worker is silent", async ({
  page,
  goldenAddress,
}) => {
  await openGolden(page, goldenAddress);
  const { given, after } = await page.evaluate(() => window.goldenPage.cancelled());
  expect(new Set(given)).toEqual(new Set(["AbortError"]));
  expect(after).toContain('"milliMag"');
  expect(await page.evaluate(() => window.goldenPage.ended())).toBe("silent");
});
