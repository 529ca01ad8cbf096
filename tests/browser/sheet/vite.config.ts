/** Builds the page that holds nothing but the sheet; the specs beside it start the build. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here("."),
  base: "./",
  publicDir: false,
  logLevel: "error",
  resolve: { alias: { "#core": here("../../../src/core"), "#shared": here("../../../shared") } },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: { target: "es2023", emptyOutDir: true, assetsInlineLimit: 0, reportCompressedSize: false },
});
