/** Every screen keeps to the strict content policy and to its own origin; and a page that did not would be caught. */
import { expect, test as plain } from "@playwright/test";
import { test, watch } from "./play/watch.ts";

const SCREENS = [
  ["/#/", "Faintward"],
  ["/#/lesson/1-01", "Push, look, claim"],
  ["/#/lesson/3-03", "One step north"],
  ["/#/bench", "Lesson bench"],
  ["/#/catalogue", "Your own catalogue"],
] as const;

test("start, lessons over both skies and the bench breach no policy and ask nobody else", async ({ page }) => {
  for (const [address, heading] of SCREENS) {
    await page.goto(address);
    await expect(page.getByRole("heading", { name: heading, exact: true }).first()).toBeVisible();
    await page.waitForLoadState("networkidle");
  }
});

test("the page is served with the policy that its own head names", async ({ page }) => {
  const answer = await page.goto("/");
  const served = answer?.headers()["content-security-policy"] ?? "";
  const own = await page.locator("meta[http-equiv='Content-Security-Policy']").getAttribute("content");
  for (const term of (own ?? "").split("; ")) expect(served).toContain(term);
  expect(own).toContain("script-src 'self'");
  expect(served).not.toMatch(/unsafe|\*|https?:/);
});

plain("a breach, a request elsewhere and an error are all caught", async ({ context, page, baseURL }) => {
  const faults = await watch(context, new URL(baseURL ?? "").origin);
  await page.goto("/");
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "window.got = true";
    document.head.append(script);
    setTimeout(() => {
      throw new Error("thrown on purpose");
    });
    console.error("said on purpose");
  });
  // A page that is left may take with it what it has not told yet.
  await expect.poll(() => faults.join("\n")).toMatch(/policy: script-src-elem inline/);
  await expect.poll(() => faults.join("\n")).toContain("error: thrown on purpose");
  await page.goto("http://localhost:1/").catch(() => undefined);
  const told = faults.join("\n");
  expect(told).toContain("console: said on purpose");
  expect(told).toContain("request: http://localhost:1/");
});
