/** Checks one lesson file in this process and tells what it cost, as JSON on standard error. */
import { existsSync, readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

/** The most memory that this process ever had. Linux counts the parent's into maxRSS of a fresh child, but not here. */
function peakBytes() {
  const status = "/proc/self/status";
  if (!existsSync(status)) return process.resourceUsage().maxRSS * 1024;
  return Number(/VmHWM:\s+(\d+) kB/.exec(readFileSync(status, "utf8"))[1]) * 1024;
}

const [program, file] = process.argv.slice(2);
const { main } = await import(pathToFileURL(program).href);
const idleBytes = process.memoryUsage.rss();
const before = process.cpuUsage();
const exit = await main(["lesson", file, "--json"], "/");
const { user, system } = process.cpuUsage(before);
// Processor time: what else the machine does must not decide the test.
const tookMs = (user + system) / 1000;
process.stderr.write(JSON.stringify({ exit, tookMs, aboveIdleMb: (peakBytes() - idleBytes) / 1_048_576 }));
