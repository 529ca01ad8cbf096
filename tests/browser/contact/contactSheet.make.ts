/** Ten known fields in three instruments under three skies, and the open sky, at both lights: sheets to be looked at. */
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { test } from "@playwright/test";
import { build } from "vite";
import { serveSky } from "../stage/stagePage.ts";
import { BODIES, BODY_INSTRUMENTS, FIELDS, INSTRUMENTS, LAMPS, OPEN_SKIES, OPEN_SKY_SKIES, SKIES } from "./fields.ts";
import type { SheetSpec } from "./page.ts";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const FOLDER = at("../../../dist/contact");
const PAGE = at("../../../dist/test/contact");
type Serve = (folder: string, firstPort: number) => Promise<{ server: { close(): void }; port: number }>;

test("the contact sheets", async ({ page }) => {
  await build({ configFile: at("vite.config.ts"), build: { outDir: PAGE } });
  const { serve } = (await import(new URL("../../../src/tools/serve.mjs", import.meta.url).href)) as { serve: Serve };
  const { server, port } = await serve(PAGE, 4390);
  await serveSky(page);
  await page.goto(`http://localhost:${port}/`);
  await page.waitForFunction(() => window.contactSheet);
  mkdirSync(FOLDER, { recursive: true });
  const make = async (spec: SheetSpec, name = spec.gear) => {
    const jpeg = await page.evaluate((wanted) => window.contactSheet(wanted), spec);
    writeFileSync(`${FOLDER}/${name}-${spec.lamp}.jpg`, Buffer.from(jpeg, "base64"));
  };
  for (const lamp of LAMPS) {
    for (const gear of INSTRUMENTS) await make({ gear, fields: FIELDS, skies: SKIES, lamp, cellPx: 372 });
    for (const gear of BODY_INSTRUMENTS)
      await make({ gear, fields: BODIES, skies: { village: SKIES.village }, lamp, cellPx: 640 }, `bodies-${gear}`);
    await make({ gear: "eye", fields: OPEN_SKIES, skies: OPEN_SKY_SKIES, lamp, cellPx: 640 });
  }
  server.close();
  rmSync(PAGE, { recursive: true, force: true });
});
