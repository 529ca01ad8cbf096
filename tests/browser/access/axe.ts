/** The accessibility tree as axe-core judges it. */
import { readFileSync } from "node:fs";
import type { Page } from "@playwright/test";

const SOURCE = readFileSync(new URL("../../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");

interface Axe {
  run(options: object): Promise<{ violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[] }>;
}

/** What is wrong with the screen that stands, a line for each rule; colours are judged by daylight only. */
export async function axeFaults(page: Page, withContrast: boolean): Promise<string[]> {
  // Evaluated, not added as a script: the page's policy lets none in.
  if (!(await page.evaluate(() => "axe" in window))) await page.evaluate(SOURCE);
  return page.evaluate(async (enabled) => {
    const { axe } = window as unknown as { axe: Axe };
    const { violations } = await axe.run({ rules: { "color-contrast": { enabled } } });
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(" | ")}`);
  }, withContrast);
}
