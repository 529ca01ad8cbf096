/** A module of the project in this Node, through the builder, which knows the aliases that Node does not. */
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const repo = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

async function load<T>(path: string): Promise<T> {
  const alias = { "#core": repo("src/core"), "#shared": repo("shared") };
  const how = { configFile: false as const, logLevel: "silent" as const, resolve: { alias } };
  return (await runnerImport<T>(repo(path), how)).module;
}

/** Loading takes half a second: once for each worker. */
const loaded = new Map<string, Promise<unknown>>();

/** @param path from the project's top */
export function nodeModule<T>(path: string): Promise<T> {
  const module = loaded.get(path) ?? load<T>(path);
  loaded.set(path, module);
  return module as Promise<T>;
}
