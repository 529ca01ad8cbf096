/** A module of the project as it is shipped, in one piece: unbuilt modules reach into each other at half the speed. */
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const repo = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

/** @param path from the project's top */
export async function builtModule<T>(path: string): Promise<T> {
  await build({
    configFile: false,
    logLevel: "silent",
    resolve: { alias: { "#core": repo("src/core"), "#shared": repo("shared") } },
    build: {
      ssr: repo(path),
      target: "es2023",
      outDir: repo("dist/bench"),
      emptyOutDir: false,
      rolldownOptions: { output: { entryFileNames: "[name].mjs" } },
    },
  });
  const name = path.slice(path.lastIndexOf("/") + 1).replace(/\.ts$/, ".mjs");
  return import(pathToFileURL(repo(`dist/bench/${name}`)).href);
}
