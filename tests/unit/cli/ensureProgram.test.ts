import { spawn } from "node:child_process";
import { readdirSync, statSync, utimesSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { faintward, repo } from "./faintward.ts";

const CACHE = repo("node_modules/.cache/faintward");
const PROGRAM = `${CACHE}/main.mjs`;

const called = () =>
  new Promise<{ exit: number | null; out: string; err: string }>((resolve) => {
    const child = spawn(process.execPath, [repo("src/cli/faintward.mjs"), "name", "M 27", "--json"]);
    let [out, err] = ["", ""];
    child.stdout.on("data", (bytes) => {
      out += bytes;
    });
    child.stderr.on("data", (bytes) => {
      err += bytes;
    });
    child.on("close", (exit) => resolve({ exit, out, err }));
  });

describe("the program behind the bin", () => {
  it("is built where it is older than a source, and not again after that", () => {
    faintward("help");
    utimesSync(PROGRAM, 1000, 1000);
    expect(faintward("help")).toMatchObject({ exit: 0, err: "" });
    const built = statSync(PROGRAM);
    expect(built.mtimeMs).toBeGreaterThan(1_000_000_000_000);
    faintward("help");
    expect(statSync(PROGRAM).ino).toBe(built.ino);
  });

  it("is built once by several calls at the same time; each answers, and nothing is left lying about", async () => {
    utimesSync(PROGRAM, 1000, 1000);
    const answers = await Promise.all([called(), called(), called()]);
    for (const { exit, out, err } of answers) {
      expect([exit, err]).toEqual([0, ""]);
      expect((JSON.parse(out) as { matches: unknown[] }).matches).toHaveLength(1);
    }
    expect(readdirSync(CACHE).filter((name) => name.startsWith("build-"))).toEqual([]);
  });
});
