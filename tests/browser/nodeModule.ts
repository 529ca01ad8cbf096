/** A module of the project in this Node, through the builder, which knows the aliases that Node does not. */
import { fileURLToPath } from "node:url";
import { runnerImport } from "vite";

const repo = (path: string) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** @param path from the project's top */
export async function nodeModule<T>(path: string): Promise<T> {
  const alias = { "#core": repo("src/core"), "#shared": repo("shared") };
  const how = { configFile: false as const, logLevel: "silent" as const, resolve: { alias } };
  return (await runnerImport<T>(repo(path), how)).module;
}
