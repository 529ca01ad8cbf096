/** Builds the page that computes the golden figures and runs the workers. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here("."),
  base: "./",
  publicDir: false,
  logLevel: "error",
  resolve: { alias: { "#core": here("../../../src/core"), "#shared": here("../../../shared") } },
  worker: { format: "es" },
  build: { target: "es2023", emptyOutDir: true, assetsInlineLimit: 0, reportCompressedSize: false },
});
