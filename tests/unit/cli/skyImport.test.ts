/** `sky import`: the answer's shape, and that a failure leaves what was there. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { repo } from "./faintward.ts";

const folder = mkdtempSync(join(tmpdir(), "faintward-import-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const run = (...args: readonly string[]) =>
  spawnSync(process.execPath, [repo("src/cli/faintward.mjs"), "sky", "import", ...args, "--json"], {
    cwd: folder,
    encoding: "utf8",
  });

it("a file becomes a folder of tiles; a broken one later changes nothing", () => {
  writeFileSync(join(folder, "mine.csv"), "ra,dec,vmag\n10,20,5\n10,95,5\n11,21,8\n");
  const good = run("mine.csv", "--as", "own");
  expect(good.status, good.stderr).toBe(0);
  expect(JSON.parse(good.stdout)).toMatchObject({
    name: "own",
    stars: 2,
    files: 61,
    dropped: [{ why: "declination lies beyond 90 degrees", count: 1 }],
    badRows: { count: 1, first: [{ line: 3 }] },
  });
  const before = readFileSync(join(folder, "own", "SHA256SUMS"), "utf8");
  writeFileSync(join(folder, "cut.xml"), "<VOTABLE><RESOURCE>");
  const bad = run("cut.xml", "--as", "own");
  expect(bad.status).toBe(2);
  expect(JSON.parse(bad.stdout)).toMatchObject({ error: { code: "FILE", file: "cut.xml" } });
  expect(bad.stderr.trim().split("\n")).toHaveLength(1);
  expect(readFileSync(join(folder, "own", "SHA256SUMS"), "utf8")).toBe(before);
  expect(readdirSync(folder).sort()).toEqual(["cut.xml", "mine.csv", "own"]);
});

it("a folder of something else is not replaced", () => {
  mkdirSync(join(folder, "letters"));
  writeFileSync(join(folder, "letters", "dear.txt"), "x");
  writeFileSync(join(folder, "a.csv"), "ra,dec,vmag\n10,20,5\n");
  expect(run("a.csv", "--as", "letters").status).toBe(2);
  expect(readdirSync(join(folder, "letters"))).toEqual(["dear.txt"]);
});
