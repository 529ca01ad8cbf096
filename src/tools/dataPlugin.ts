/**
 * The page fetches its large tables as data instead of carrying them in its script: a browser reads JSON faster than it
 * compiles it. Tests and command line import the same files as they are.
 */
import { readFileSync } from "node:fs";
import type { Plugin } from "vite";

const TABLES = /[/\\]shared[/\\](stars|figures|objects|constellations|glow|borders|sallowfell|populations)\.json$/;
/** The leading zero byte keeps other plugins off. */
const MARK = "\0table:";

export function dataPlugin(): Plugin {
  return {
    name: "faintward-data",
    apply: "build",
    enforce: "pre",
    resolveId: (source) => (TABLES.test(source) ? `${MARK}${source.slice(0, -".json".length)}` : null),
    load(id) {
      if (!id.startsWith(MARK)) return null;
      const path = `${id.slice(MARK.length)}.json`;
      const name = TABLES.exec(path)?.[1];
      const source = JSON.stringify(JSON.parse(readFileSync(path, "utf8")));
      const file = this.emitFile({ type: "asset", name: `${name}.json`, source });
      return `export default await fetch(import.meta.ROLLUP_FILE_URL_${file}).then((answer) => answer.json());`;
    },
  };
}
