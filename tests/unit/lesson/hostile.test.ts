/** Files that mean harm, each checked in a process of its own: refused in time and in memory, with a finding and no crash. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkLesson } from "#core/lesson/format.ts";
import { smallLookups } from "./smallSky.ts";
import { SOUND } from "./sound.ts";

const MOST_MS = 200;
const MOST_MB = 64;

const lines = (count: number, line: (i: number) => string) =>
  Array.from({ length: count }, (_, i) => line(i)).join("\n");
const bomb = `a0: &a0 [x, x, x, x, x, x, x, x, x]\n${lines(9, (i) => `a${i + 1}: &a${i + 1} [${`*a${i}, `.repeat(9)}x]`)}\n`;

const HOSTILE: Readonly<Record<string, { readonly bytes: string | Uint8Array; readonly code: string }>> = {
  "alias bomb": { bytes: bomb, code: "FW005" },
  "flat map of 417 kB": { bytes: lines(42_000, (i) => `k${i}: ${i % 10}`), code: "FW001" },
  "flat map within the size": { bytes: lines(6000, (i) => `k${i}: ${i % 10}`), code: "FW004" },
  "flow map within the size": {
    bytes: `{${lines(12_000, (i) => i.toString(36)).replaceAll("\n", ",")}}`,
    code: "FW004",
  },
  "brackets 100,000 deep": { bytes: "[".repeat(100_000), code: "FW001" },
  "brackets 60,000 deep": { bytes: "[".repeat(60_000), code: "FW003" },
  "braces with keys, deep": { bytes: "{a: ".repeat(16_000), code: "FW003" },
  "brackets hidden by quotes": { bytes: "[']', ".repeat(10_000), code: "FW003" },
  "dashes 30,000 deep": { bytes: "- ".repeat(30_000), code: "FW003" },
  "question marks deep": { bytes: "? ".repeat(30_000), code: "FW003" },
  "indentation deep": { bytes: lines(350, (i) => `${" ".repeat(i)}a:`), code: "FW003" },
  "60,000 closing brackets": { bytes: "]".repeat(60_000), code: "FW006" },
  "30,000 errors": { bytes: "'\n".repeat(30_000), code: "FW004" },
  "bad escapes": { bytes: `a: "${"\\q".repeat(30_000)}"`, code: "FW004" },
  "a 60,000 digit number": { bytes: SOUND.replace("minutes: 5", `minutes: ${"9".repeat(60_000)}`), code: "FW012" },
  "huge exponents": { bytes: SOUND.replace("latDeg: 50", "latDeg: 1e999"), code: "FW012" },
  "a year beyond reach": { bytes: SOUND.replace("2027-08-31", "9999-08-31"), code: "FW013" },
  "a comet of no number": { bytes: SOUND.replace("perihelionAu: 0.92", "perihelionAu: .nan"), code: "FW012" },
  "an eccentricity beyond reach": { bytes: SOUND.replace("eccentricity: 1\n", "eccentricity: 1e300\n"), code: "FW013" },
  "a perihelion in the Sun": { bytes: SOUND.replace("perihelionAu: 0.92", "perihelionAu: -0.0"), code: "FW013" },
  "elements of another age": { bytes: SOUND.replace("epoch: 2027", "epoch: 1900"), code: "FW046" },
  "comets by the hundred": {
    bytes: SOUND.replace("bodies:\n", `bodies:\n${lines(150, (i) => `  - { name: c${i}, kind: comet }`)}\n`),
    code: "FW013",
  },
  "keys of the prototype": {
    bytes: SOUND.replace("minutes: 5", "__proto__: { minutes: 5 }\nconstructor: 1"),
    code: "FW011",
  },
  "a code of the prototype": { bytes: SOUND.replace("INV-KEEP:", "__proto__:"), code: "FW011" },
  "a tag": { bytes: SOUND.replace("minutes: 5", "minutes: !!js/function 'x'"), code: "FW005" },
  "a directive": { bytes: `%YAML 1.1\n---\n${SOUND}`, code: "FW005" },
  "two documents": { bytes: `${SOUND}---\n${SOUND}`, code: "FW006" },
  binary: { bytes: Uint8Array.from({ length: 20_000 }, (_, i) => (i * 7919) % 256), code: "FW002" },
  "half a surrogate": { bytes: Uint8Array.from([0x61, 0x3a, 0x20, 0xed, 0xa0, 0x80]), code: "FW002" },
  empty: { bytes: "", code: "FW012" },
  "400 unknown names": {
    bytes: SOUND.replace(
      / {6}ways:[\s\S]*? {6}steps:/,
      `      ways:\n${lines(6, (w) => `        - name: w\n          marks: [${Array.from({ length: 12 }, (_, m) => `Unknown star number ${w}-${m}`).join(", ")}]`)}\n      steps:`,
    ),
    code: "FW022",
  },
};

describe("hostile files", () => {
  let folder: string;
  let program: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), "faintward-hostile-"));
    const builder = new URL("../../../src/cli/ensureProgram.mjs", import.meta.url).href;
    program = await (
      (await import(/* @vite-ignore */ builder)) as { ensureProgram(say: () => void): Promise<string> }
    ).ensureProgram(() => {});
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  it.each(Object.entries(HOSTILE))("%s", (name, { bytes, code }) => {
    const file = join(folder, `${name.replaceAll(" ", "-")}.yaml`);
    writeFileSync(file, bytes);
    const child = fileURLToPath(new URL("hostileChild.mjs", import.meta.url));
    const { stdout, stderr } = spawnSync(process.execPath, [child, program, file], { encoding: "utf8" });
    const findings = JSON.parse(stdout) as { code: string; severity: string }[];
    const { exit, tookMs, aboveIdleMb } = JSON.parse(stderr) as { exit: number; tookMs: number; aboveIdleMb: number };
    expect(exit).toBe(1);
    expect(findings.map((finding) => finding.code)).toContain(code);
    expect(findings.length).toBeLessThanOrEqual(100);
    expect(tookMs).toBeLessThan(MOST_MS);
    expect(aboveIdleMb).toBeLessThan(MOST_MB);
    if (process.env.SHOW_COST)
      console.log(`${name}: ${tookMs.toFixed(0)} ms, ${aboveIdleMb.toFixed(1)} MB, ${findings.length} findings`);
  });
});

describe("files that only look strange", () => {
  it.each([
    ["a byte order mark", (text: string) => `\ufeff${text}`],
    ["line ends of Windows", (text: string) => text.replaceAll("\n", "\r\n")],
    ["a comment before and behind", (text: string) => `# by hand\n${text}# end`],
  ])("%s changes nothing", (_, change) => {
    expect(checkLesson("t.yaml", change(SOUND), smallLookups).findings).toEqual([]);
  });

  it("finds the same line behind a byte order mark and Windows line ends", () => {
    const bad = SOUND.replace("level: C", "level: X");
    const [plain] = checkLesson("t.yaml", bad, smallLookups).findings;
    const [strange] = checkLesson("t.yaml", `\ufeff${bad.replaceAll("\n", "\r\n")}`, smallLookups).findings;
    expect(strange).toEqual(plain);
  });

  it("leaves no trace on the prototype", () => {
    checkLesson("t.yaml", `${SOUND}__proto__: { polluted: true }\n`, smallLookups);
    expect(Object.hasOwn(Object.prototype, "polluted")).toBe(false);
  });
});
