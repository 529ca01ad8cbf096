/** Builds and serves the stage's page under the strict policy of the real one, and reads its pictures. */
import { rmSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { inflateSync } from "node:zlib";
import { test as base, type Page } from "@playwright/test";
import { build } from "vite";
import type { StageLayout } from "../../../src/stage/index.ts";
import type { SceneSpec, StagePage } from "./page.ts";
import { LAYOUT } from "./scene.ts";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
type Served = { server: { close(): void }; port: number };
type Serve = (folder: string, firstPort: number) => Promise<Served>;

/** Builds and serves the page once for each worker; the address is the fixture's value. Every test has a browser's page of its own. */
export const ownPageTest = base.extend<object, { stageAddress: string }>({
  stageAddress: [
    // biome-ignore lint/correctness/noEmptyPattern: the form that fixtures without needs have
    async ({}, use) => {
      const folder = at(`../../../dist/test/stage-${process.pid}`);
      await build({ configFile: at("vite.config.ts"), build: { outDir: folder } });
      const { serve } = (await import(new URL("../../../src/tools/serve.mjs", import.meta.url).href)) as {
        serve: Serve;
      };
      const { server, port } = await serve(folder, 4300);
      await use(`http://localhost:${port}/`);
      server.close();
      rmSync(folder, { recursive: true, force: true });
    },
    { scope: "worker" },
  ],
});

/**
 * One page of the browser for all tests of a worker, opened anew by each: what is drawn depends on the scene alone, and a
 * new process costs more than a picture.
 */
export const test = ownPageTest.extend<object, { sharedPage: Page }>({
  sharedPage: [
    async ({ browser }, use) => {
      const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
      await use(await context.newPage());
      await context.close();
    },
    { scope: "worker" },
  ],
  page: ({ sharedPage }, use) => use(sharedPage),
});

/** A picture with rows from the top down and x to the right, so that y of the sky is `height - row`. */
export class Picture {
  readonly width: number;
  readonly height: number;
  readonly #rgba: Uint8Array;
  constructor(width: number, height: number, rgba: Uint8Array) {
    this.width = width;
    this.height = height;
    this.#rgba = rgba;
  }
  /** Channel 0 .. 255 at x from the left and y from the bottom. */
  channel(x: number, y: number, c: number): number {
    return this.#rgba[(y * this.width + x) * 4 + c] ?? 0;
  }
  rgb(x: number, y: number): [number, number, number] {
    return [this.channel(x, y, 0), this.channel(x, y, 1), this.channel(x, y, 2)];
  }
  greatest(c: number): number {
    let most = 0;
    for (let i = c; i < this.#rgba.length; i += 4) most = Math.max(most, this.#rgba[i]!);
    return most;
  }
  /** How many pixels differ from another picture of the same size. */
  differing(other: Picture): number {
    let count = 0;
    for (let i = 0; i < this.#rgba.length; i += 4) {
      for (let c = 0; c < 3; c++) {
        if (this.#rgba[i + c] === other.#rgba[i + c]) continue;
        count += 1;
        break;
      }
    }
    return count;
  }
  /** How many different colours there are. */
  colours(): number {
    const seen = new Set<number>();
    for (let i = 0; i < this.#rgba.length; i += 4) {
      seen.add((this.#rgba[i]! << 16) | (this.#rgba[i + 1]! << 8) | this.#rgba[i + 2]!);
    }
    return seen.size;
  }
}

declare global {
  interface Window {
    stagePage: StagePage;
  }
}
/** The catalogue's files are beside the page. */
export const serveSky = async (page: Page): Promise<void> => {
  await page.route("**/sky/*.bin", (route) =>
    route.fulfill({ path: at(`../../../assets/sky/${route.request().url().split("/").at(-1)}`) }),
  );
};
export const openStage = async (page: Page, address: string, layout: StageLayout = LAYOUT): Promise<void> => {
  await page.goto(address);
  await page.waitForFunction(() => window.stagePage);
  await page.evaluate((wanted) => window.stagePage.start(wanted), layout);
};
export const readPicture = async (page: Page): Promise<Picture> => {
  const { width, height, rgba } = await page.evaluate(() => window.stagePage.pixels());
  return new Picture(width, height, inflateSync(Buffer.from(rgba, "base64")));
};
export const drawPicture = async (page: Page, spec: SceneSpec): Promise<Picture> => {
  await page.evaluate((wanted) => window.stagePage.draw(wanted), spec);
  return readPicture(page);
};

/** Light of a display value, 0 .. 1 (IEC 61966-2-1). */
export const lightOf = (display: number): number =>
  display <= 0.04045 ? display / 12.92 : ((display + 0.055) / 1.055) ** 2.4;

export type Measured = { readonly x: number; readonly y: number; readonly flux: number };
/** Flux (green, linear light, the empty sky taken off pixel by pixel) and its centre within a square round a place. */
export const measure = (picture: Picture, sky: Picture, x: number, y: number, reach: number): Measured => {
  let [flux, sumX, sumY] = [0, 0, 0];
  for (let row = Math.floor(y - reach); row <= y + reach; row++) {
    for (let column = Math.floor(x - reach); column <= x + reach; column++) {
      const light = lightOf(picture.channel(column, row, 1) / 255) - lightOf(sky.channel(column, row, 1) / 255);
      flux += light;
      sumX += light * (column + 0.5);
      sumY += light * (row + 0.5);
    }
  }
  return { x: sumX / flux, y: sumY / flux, flux };
};
