/** `sky build`: the raw catalogue to the files of the sky. */
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { table } from "../table.ts";
import { UsageError } from "../usageError.ts";
import { skyBuild } from "./skyBuild.ts";

export const sky: Verb = {
  what: "the files of the catalogue sky from the raw catalogue",
  usage: "sky build RAW_FOLDER OUT_FOLDER",
  async run(args, io) {
    const { words } = parseArgs(args, {}, { least: 1, most: 3, what: "what to do with the sky" });
    const [act, raw, out] = words;
    if (act !== "build")
      throw new UsageError(
        "ARGUMENTS",
        `sky ${act} is unknown`,
        "the one thing to do is sky build RAW_FOLDER OUT_FOLDER",
      );
    if (raw === undefined || out === undefined)
      throw new UsageError("ARGUMENTS", "a folder is missing", "write sky build RAW_FOLDER OUT_FOLDER");
    io.progress("Reading the catalogue ...");
    const built = await skyBuild(raw, out);
    return {
      exit: 0,
      json: built,
      text: [
        `${built.stars} stars in ${built.files} files, ${built.bytes} bytes.`,
        table(
          ["dropped", "count"],
          built.dropped.map(({ why, count }) => [why, String(count)]),
        ),
        table(
          ["mended", "count"],
          built.mended.map(({ why, count }) => [why, String(count)]),
        ),
      ].join("\n\n"),
    };
  },
};
