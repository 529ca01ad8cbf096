/** Runs the command line as a person would: the bin, in a process of its own. */
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const BIN = fileURLToPath(new URL("../../../src/cli/faintward.mjs", import.meta.url));
export const repo = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

export interface Ran {
  readonly exit: number | null;
  readonly out: string;
  readonly err: string;
}

export function faintward(...args: readonly string[]): Ran {
  const { status, stdout, stderr } = spawnSync(process.execPath, [BIN, ...args], { encoding: "utf8", maxBuffer: 64e6 });
  return { exit: status, out: stdout, err: stderr };
}

/** The one JSON document that a call with --json prints; anything else on standard output fails here. */
export function jsonOf<Document>(...args: readonly string[]): Document {
  const { out, err } = faintward(...args, "--json");
  if (!out) throw new Error(`no answer: ${err}`);
  return JSON.parse(out) as Document;
}
