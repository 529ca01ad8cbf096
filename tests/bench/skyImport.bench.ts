/** A million rows, one in a hundred bad, through `sky import`: time and memory, beside a plain reading of the file in the same run. */
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { expect, test } from "@playwright/test";

const ROWS = 1_000_000;
const MOST_PEAK_MB = 400;
const BIN = resolve(import.meta.dirname, "../../src/cli/faintward.mjs");

function bigCsv(): string {
  const spoilt = ["nonsense,10,5,", "10,95,5,", "10,20,,", "10,20,5"];
  const lines = ["RA,Dec,Vmag,B-V"];
  for (let i = 0; i < ROWS; i++) {
    const decDeg = (Math.asin((2 * i + 1) / ROWS - 1) * 180) / Math.PI;
    if (i % 100 === 99) lines.push(spoilt[((i - 99) / 100) % 4]!);
    else
      lines.push(`${((i * 222.492) % 360).toFixed(5)},${decDeg.toFixed(5)},${(2 + (i % 1000) / 100).toFixed(2)},0.65`);
  }
  return `${lines.join("\n")}\n`;
}

type Ran = { readonly out: string; readonly seconds: number; readonly peakMB: number };

/** A process of its own; its largest memory is what Linux says of it, 0 elsewhere. */
function run(args: readonly string[], cwd: string): Promise<Ran> {
  return new Promise((done, fail) => {
    const begun = performance.now();
    const child = spawn(process.execPath, args, { cwd, stdio: ["ignore", "pipe", "inherit"] });
    let out = "";
    let peakMB = 0;
    const watch = setInterval(() => {
      try {
        const status = readFileSync(`/proc/${child.pid}/status`, "utf8");
        peakMB = Math.max(peakMB, Number(/VmHWM:\s+(\d+)/.exec(status)?.[1] ?? 0) / 1024);
      } catch {
        // The process has ended, or this is no Linux.
      }
    }, 20);
    child.stdout.on("data", (piece) => {
      out += piece;
    });
    child.on("error", fail);
    child.on("close", () => {
      clearInterval(watch);
      done({ out, seconds: (performance.now() - begun) / 1000, peakMB });
    });
  });
}

test("a million rows become a sky", async () => {
  test.setTimeout(120_000);
  const folder = mkdtempSync(join(tmpdir(), "faintward-bench-"));
  try {
    writeFileSync(join(folder, "big.csv"), bigCsv());
    const script = 'process.stdout.write(String(require("fs").readFileSync("big.csv","utf8").split("\\n").length))';
    const plain = await run(["-e", script], folder);
    const own = await run([BIN, "sky", "import", "big.csv", "--json"], folder);
    expect(Number(plain.out)).toBe(ROWS + 2);
    const answer = JSON.parse(own.out) as { stars: number; badRows: { count: number; first: unknown[] } };
    console.log(
      `sky import, ${ROWS} rows: ${own.seconds.toFixed(1)} s, peak ${own.peakMB.toFixed(0)} MB; reading and splitting alone ` +
        `${plain.seconds.toFixed(2)} s, ${plain.peakMB.toFixed(0)} MB`,
    );
    expect(answer).toMatchObject({ stars: 990_000, badRows: { count: 10_000 } });
    expect(answer.badRows.first).toHaveLength(100);
    expect(own.peakMB).toBeLessThan(MOST_PEAK_MB);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
