/** Builds and serves the golden page under the strict policy of the real one, and computes the same figures in Node. */
import { readFileSync, rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { test as base, type Page } from "@playwright/test";
import { build } from "vite";
import type { Files } from "../../unit/desk/workerCases.ts";
import { nodeModule } from "../nodeModule.ts";
import type { goldenFigures, playedRecords, Records } from "./figures.ts";
import type { GoldenPage } from "./page.ts";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const repo = (path: string) => at(`../../../${path}`);
type Serve = (folder: string, firstPort: number) => Promise<{ server: { close(): void }; port: number }>;

declare global {
  interface Window {
    goldenPage: GoldenPage;
  }
}

export const nodeFiles: Files = {
  lesson: async (name) => readFileSync(repo(`lessons/${name}`), "utf8"),
  sky: async (name) => {
    const { buffer, byteOffset, byteLength } = readFileSync(repo(`assets/sky/${name}`));
    return (buffer as ArrayBuffer).slice(byteOffset, byteOffset + byteLength);
  },
};

type Figures = { goldenFigures: typeof goldenFigures; playedRecords: typeof playedRecords };

/** The same module in this Node. */
export const nodeFigures = (): Promise<Figures> => nodeModule<Figures>("tests/browser/golden/figures.ts");

/** Opens the built page once for each worker; the address is the fixture's value. */
export const test = base.extend<object, { goldenAddress: string }>({
  goldenAddress: [
    // biome-ignore lint/correctness/noEmptyPattern: the form that fixtures without needs have
    async ({}, use) => {
      const folder = repo(`dist/test/golden-${process.pid}`);
      await build({ configFile: at("vite.config.ts"), build: { outDir: folder } });
      const { serve } = (await import(new URL("../../../src/tools/serve.mjs", import.meta.url).href)) as {
        serve: Serve;
      };
      const { server, port } = await serve(folder, 4360);
      await use(`http://localhost:${port}/`);
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
    { scope: "worker" },
  ],
});

/** Opens the page; lessons and tiles come from the project's own folders. */
export async function openGolden(page: Page, address: string): Promise<void> {
  await page.route("**/sky/*", (route) => route.fulfill({ path: repo(`assets/sky/${nameOf(route.request().url())}`) }));
  await page.route("**/lessons/*", (route) =>
    route.fulfill({ path: repo(`lessons/${nameOf(route.request().url())}`) }),
  );
  await page.goto(address);
  await page.waitForFunction(() => window.goldenPage);
}

const nameOf = (url: string): string => new URL(url).pathname.split("/").at(-1) ?? "";

export type { Records };
