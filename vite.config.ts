import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { BASE_STYLES, baseFirst } from "./src/tools/baseFirst.ts";
import { dataPlugin } from "./src/tools/dataPlugin.ts";
import { lessonPlugin } from "./src/tools/lessonPlugin.ts";
import { shaderText } from "./src/tools/shaderText.ts";

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  base: "./",
  plugins: [lessonPlugin(), dataPlugin(), baseFirst(), shaderText()],
  publicDir: "assets",
  resolve: { alias: { "#core": here("src/core"), "#shared": here("shared") } },
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  build: {
    target: "es2023",
    outDir: "dist/page",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    sourcemap: false,
    rolldownOptions: { output: { advancedChunks: { groups: [BASE_STYLES] } } },
  },
  worker: { format: "es" },
  test: {
    include: ["tests/unit/**/*.test.ts", "tests/reference/**/*.test.ts"],
    environment: "node",
    testTimeout: 60_000,
  },
});
