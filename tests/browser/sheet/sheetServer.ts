/** Builds and serves the sheet's page under the strict policy of the real one; the sky's files come from the assets. */
import { readFileSync, rmSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath } from "node:url";
import { test as base, type Page } from "@playwright/test";
import { build } from "vite";
import type { SheetPage, SheetScene } from "./page.tsx";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
type Serve = (folder: string, firstPort: number) => Promise<{ server: { close(): void }; port: number }>;

declare global {
  interface Window {
    sheetPage: SheetPage;
  }
}

/** Built once for each worker; the address is the fixture's value. */
export const test = base.extend<object, { sheetAddress: string }>({
  sheetAddress: [
    // biome-ignore lint/correctness/noEmptyPattern: the form that fixtures without needs have
    async ({}, use) => {
      const folder = at(`../../../dist/test/sheet-${process.pid}`);
      await build({ configFile: at("vite.config.ts"), build: { outDir: folder } });
      const { serve } = (await import(new URL("../../../src/tools/serve.mjs", import.meta.url).href)) as {
        serve: Serve;
      };
      const { server, port } = await serve(folder, 4500);
      await use(`http://localhost:${port}/`);
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
    { scope: "worker" },
  ],
});

export async function openSheet(page: Page, address: string): Promise<void> {
  await page.route("**/sky/*", (route) =>
    route.fulfill({ body: readFileSync(at(`../../../assets/sky/${basename(route.request().url())}`)) }),
  );
  await page.goto(address);
  await page.waitForFunction(() => window.sheetPage);
}
export async function showSheet(page: Page, scene: SheetScene): Promise<void> {
  await page.evaluate((wanted) => window.sheetPage.show(wanted), scene);
  await settled(page);
}
/** Until the paper rests, its lettering is laid and two frames have gone by. */
export async function settled(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector(".sheet:not(.is-moving) .sheet-letters text"));
  await page.waitForTimeout(420);
}
export const viewNow = (page: Page) => page.evaluate(() => window.sheetPage.view());
export const toldNow = (page: Page) => page.evaluate(() => window.sheetPage.told);
/** Boxes of all lettering on the sheet. */
export const letterBoxes = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll(".sheet-letters text")].map((text) => {
      const { left, top, right, bottom } = text.getBoundingClientRect();
      return { text: text.textContent, left, top, right, bottom };
    }),
  );
