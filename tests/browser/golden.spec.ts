/** The same integers in Node and in the page: exact mathematics, tiles, limits of the eye, the hops of days, compiled attempts, scores of records from either. */
import { expect } from "@playwright/test";
import { nodeFigures, nodeFiles, openGolden, test } from "./golden/goldenPage.ts";

test("exact mathematics, tiles, limits, compiled attempts and scores are the same in Node and in the page", async ({
  page,
  goldenAddress,
}) => {
  await openGolden(page, goldenAddress);
  const here = await nodeFigures();
  const byNode = await here.playedRecords(nodeFiles);
  const byPage = await page.evaluate(() => window.goldenPage.records());
  for (const records of [byNode, byPage]) {
    const inPage = await page.evaluate((given) => window.goldenPage.figures(given), records);
    expect(Object.keys(inPage)).toHaveLength(17);
    expect(inPage).toEqual(await here.goldenFigures(nodeFiles, records));
  }
});
