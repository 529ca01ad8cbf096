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

const ask = (...args: readonly string[]) =>
  spawnSync(process.execPath, [repo("src/cli/faintward.mjs"), ...args, "--json"], { cwd: folder, encoding: "utf8" });

it("its names are kept and found, and its stars read, under its own name", () => {
  writeFileSync(join(folder, "named.csv"), "name,ra,dec,vmag\nHill Lantern,10,20,5\nVega,11,21,8\n,12,22,9\n");
  const made = run("named.csv", "--as", "lantern");
  expect(JSON.parse(made.stdout)).toMatchObject({ stars: 3, names: { kept: 2, of: 2 }, files: 62 });
  const [found] = JSON.parse(ask("name", "hill lantrn", "--sky", "lantern").stdout).matches;
  expect(found).toMatchObject({ name: "Hill Lantern", kind: "star", magV: 5, constellation: "Pisces" });
  expect(found.raDeg).toBeCloseTo(10, 5);
  // A name of its own comes before the real sky's star of that name; other names of the real sky stay.
  const vegas = JSON.parse(ask("name", "Vega", "--sky", "lantern").stdout).matches;
  expect(vegas.map(({ magV }: { magV: number }) => magV)).toEqual([8]);
  expect(ask("name", "Altair", "--sky", "lantern").status).toBe(0);
  expect(ask("name", "Hill Lantern").status).toBe(1);

  const about = ["--ra=10", "--dec=20", "--radius=5", "--limit=9.5", "--sky", "lantern"];
  const { stars } = JSON.parse(ask("stars", ...about).stdout);
  expect(stars.map(({ magV }: { magV: number }) => magV)).toEqual([5, 8, 9]);
  const place = ["place", "Hill Lantern", "--site=50,0,250", "--time=2027-08-31T21:00:00Z", "--sky", "lantern"];
  expect(JSON.parse(ask(...place).stdout).decDeg).toBeCloseTo(20, 5);
  writeFileSync(join(folder, "lantern", "names.json"), '{"format":1,"names":[["x",9,9,9,1]]}');
  expect(ask("name", "x", "--sky", "lantern").status).toBe(2);
  rmSync(join(folder, "lantern"), { recursive: true });
  rmSync(join(folder, "named.csv"));
});

it("its stars are in the fields of view, and its names can be looked at", () => {
  writeFileSync(
    join(folder, "field.csv"),
    "name,ra,dec,vmag\nHill Lantern,10,20,5\n,10.5,20.2,8\n,10.2,19.5,9.2\n,40,20,4\n",
  );
  expect(run("field.csv", "--as", "field").status).toBe(0);
  const view = ["view", "--ra=10", "--dec=20", "--gear=finder-9x50", "--limit=9"];
  const seen = (...more: readonly string[]) =>
    (JSON.parse(ask(...view, ...more).stdout) as { stars: { magV: number; raDeg: number }[] }).stars;
  expect(seen("--sky", "field").map(({ magV }) => magV)).toEqual([5, 8]);
  // The real sky has others there.
  expect(seen().map(({ magV }) => magV)).not.toEqual([5, 8]);

  const look = ["--eye", "--darkness=21", "--sky", "field"];
  const lantern = ask("see", "Hill Lantern", ...look);
  expect(lantern.status).toBe(0);
  expect(JSON.parse(lantern.stdout)).toMatchObject({ visible: true, band: "seen" });
  // Names and objects of the real sky stay.
  expect(JSON.parse(ask("see", "M 57", ...look).stdout)).toMatchObject({ visible: false });
  expect(ask("see", "Hill Lantern", "--eye", "--darkness=21").status).toBe(2);
});

it("what comes with the program is not replaced", () => {
  writeFileSync(join(folder, "b.csv"), "ra,dec,vmag\n10,20,5\n");
  expect(run("b.csv", "--as", "catalogue").status).toBe(2);
  // The files of a sky that no import made, as the program's own are.
  mkdirSync(join(folder, "sky"));
  writeFileSync(join(folder, "sky", "stars-0.bin"), "x");
  writeFileSync(join(folder, "sky", "SHA256SUMS"), "x");
  expect(run("b.csv", "--as", "sky").status).toBe(2);
  expect(readdirSync(join(folder, "sky")).sort()).toEqual(["SHA256SUMS", "stars-0.bin"]);
  rmSync(join(folder, "sky"), { recursive: true });
});

it("a folder of something else is not replaced", () => {
  mkdirSync(join(folder, "letters"));
  writeFileSync(join(folder, "letters", "dear.txt"), "x");
  writeFileSync(join(folder, "a.csv"), "ra,dec,vmag\n10,20,5\n");
  expect(run("a.csv", "--as", "letters").status).toBe(2);
  expect(readdirSync(join(folder, "letters"))).toEqual(["dear.txt"]);
});
