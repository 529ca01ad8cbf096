/** What a report says of a hop, as it stands on the page. */
import { expect, type Page } from "@playwright/test";

/** The first whole number of a cell: "48 of 48", "−10 of 30", "+2", "97". */
const pointsOf = (cell: string): number => Number(/[−+]?\d+/.exec(cell)?.[0].replace("−", "-") ?? 0);

/** Checks that the hop was found and that the lines add up to the score; gives the points. */
export async function foundWithPoints(page: Page): Promise<number> {
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/: found$/);
  const rows = await page
    .locator("table.sum tbody tr")
    .evaluateAll((all) => all.map((row) => [...row.children].map((cell) => cell.textContent ?? "")));
  const together = rows.pop()!;
  expect(together[0]).toBe("Together");
  expect(rows.map(([part]) => part?.split(":")[0])).toEqual(["Found", "Directness", "Pins", "Care"]);
  const lines = rows.slice(1).map((row) => pointsOf(row[2] ?? ""));
  const points = pointsOf(together[2] ?? "");
  expect(lines.reduce((sum, line) => sum + line, 0)).toBe(points);
  await expect(page.locator(".score .points")).toHaveText(String(points));
  return points;
}
