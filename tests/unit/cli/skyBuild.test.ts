/** Raw folders that are not the catalogue's: byte layout and flags after the catalogue's own ReadMe (CDS I/259). */
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { AppError } from "#core/seams/errors.ts";
import { skyBuild } from "../../../src/cli/verbs/skyBuild.ts";
import { repo } from "./faintward.ts";

const EXCERPT = repo("tests/reference/data/tycho2-excerpt");
let folder: string;
let raw: string;
let out: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "faintward-raw-"));
  [raw, out] = [join(folder, "raw"), join(folder, "out")];
  cpSync(EXCERPT, raw, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true }));

const textOf = (name: string) => readFileSync(join(EXCERPT, name), "latin1");
const put = (name: string, text: string | Uint8Array) =>
  writeFileSync(join(raw, name), typeof text === "string" ? Buffer.from(text, "latin1") : text);
const lines = textOf("tyc2.dat.00").split("\n");
/** The main catalogue with its fifth line changed. */
const withFifth = (change: (line: string) => string) =>
  lines.map((line, i) => (i === 4 ? change(line) : line)).join("\n");

async function refusal(): Promise<AppError & { place?: unknown }> {
  const error: unknown = await skyBuild(raw, out).then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(AppError);
  expect(readdirSync(folder), "nothing is written").toEqual(["raw"]);
  return error as AppError;
}

describe("a line that is none of the catalogue's is blamed by file and line", () => {
  it.each([
    ["cut short", (line: string) => line.slice(0, 60), "no number in bytes"],
    ["another alphabet", () => "\u00c4rger \u00fcber alles", "byte 14"],
    ["zeros", () => "\0".repeat(206), "byte 14"],
    [
      "beyond the pole",
      (line: string) => `${line.slice(0, 28)} 95.00000000${line.slice(40)}`,
      "no place on the sphere",
    ],
    ["more than a circle", (line: string) => `${line.slice(0, 15)}400.00000000${line.slice(27)}`, "on the sphere"],
    ["a flag that there is not", (line: string) => `${line.slice(0, 13)}Z${line.slice(14)}`, "byte 14"],
  ])("%s", async (_, change, words) => {
    put("tyc2.dat.00", withFifth(change));
    const file = join(raw, "tyc2.dat.00");
    const { message, place } = await refusal();
    expect(message).toContain(`${file}:5: no `);
    expect(message).toContain(words);
    expect(place).toEqual({ file, line: 5 });
  });

  it("in a supplement too", async () => {
    const text = textOf("suppl_1.dat");
    put("suppl_1.dat", text.slice(0, text.trimEnd().length - 60));
    const { place } = await refusal();
    expect(place).toEqual({ file: join(raw, "suppl_1.dat"), line: text.trimEnd().split("\n").length });
  });
});

describe("a folder that lacks something", () => {
  it.each(["tyc2.dat.00", "suppl_1.dat", "suppl_2.dat"])("%s is empty", async (name) => {
    put(name, "");
    expect((await refusal()).message).toBe(`${join(raw, name)}:1: the file is empty`);
  });
  it.each(["tyc2.dat.00", "suppl_1.dat", "suppl_2.dat"])("%s is still packed", async (name) => {
    put(name, gzipSync(textOf(name)));
    expect((await refusal()).hint).toContain("Unpack it first");
  });
  it("a part between the first and the last", async () => {
    put("tyc2.dat.02", textOf("tyc2.dat.00"));
    expect((await refusal()).message).toContain("tyc2.dat.01 is missing");
  });
  it("or has it twice", async () => {
    put("tyc2.dat", textOf("tyc2.dat.00"));
    expect((await refusal()).message).toContain("whole and in parts");
  });
});

describe("line ends", () => {
  it.each(["\r\n", "\r"])("%j make the same sky", async (end) => {
    const built = await skyBuild(EXCERPT, out);
    for (const name of ["tyc2.dat.00", "suppl_1.dat", "suppl_2.dat"]) put(name, textOf(name).replaceAll("\n", end));
    expect(await skyBuild(raw, join(folder, "again"))).toEqual(built);
  });
});

describe("the folder to write", () => {
  it("is made with those above it, and may be there", async () => {
    const deep = join(folder, "a", "b", "sky");
    const first = await skyBuild(raw, deep);
    expect(await skyBuild(raw, deep)).toEqual(first);
    expect(readdirSync(deep)).toHaveLength(first.files + 1);
  });
  it.each([
    ["no name", () => ""],
    ["a file", () => join(raw, "suppl_1.dat")],
    ["below a file", () => join(raw, "suppl_1.dat", "sky")],
    [
      "where no folder can be made",
      () => (existsSync("/proc/self") ? "/proc/faintward/sky" : join(raw, "suppl_2.dat")),
    ],
  ])("%s: refused, without trying for ever", async (_, path) => {
    await expect(skyBuild(raw, path())).rejects.toMatchObject({ syscall: "mkdir" });
  });
});
