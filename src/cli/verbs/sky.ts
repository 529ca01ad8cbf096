/** `sky`: the files of a sky, from the raw catalogue or from a catalogue of one's own. */
import { parseArgs } from "../args.ts";
import type { Answer, Io, Verb } from "../io.ts";
import { table } from "../table.ts";
import { UsageError } from "../usageError.ts";
import { skyBuild } from "./skyBuild.ts";
import { skyImport } from "./skyImport.ts";

type Count = { readonly why: string; readonly count: number };

const countTable = (head: string, counts: readonly Count[]) =>
  table(
    [head, "count"],
    counts.map(({ why, count }) => [why, String(count)]),
  );

async function build(args: readonly string[], io: Io): Promise<Answer> {
  const { words } = parseArgs(args, {}, { least: 0, most: 2, what: "a folder" });
  const [raw, out] = words;
  if (raw === undefined || out === undefined)
    throw new UsageError("ARGUMENTS", "a folder is missing", "write sky build RAW_FOLDER OUT_FOLDER");
  io.progress("Reading the catalogue ...");
  const built = await skyBuild(raw, out);
  return {
    exit: 0,
    json: built,
    text: [
      `${built.stars} stars in ${built.files} files, ${built.bytes} bytes.`,
      countTable("dropped", built.dropped),
      countTable("mended", built.mended),
    ].join("\n\n"),
  };
}

const namesWords = ({ kept, of }: { kept: number; of: number }) =>
  kept < of ? `${kept} names of the brightest stars, of ${of}, are kept for the search.` : `${of} names are kept.`;

async function importOwn(args: readonly string[], io: Io): Promise<Answer> {
  const { words, options } = parseArgs(args, { as: "value" }, { least: 1, most: 1, what: "the file to import" });
  const imported = await skyImport(words[0]!, options.as, io.progress);
  const { badRows, names } = imported;
  const faults = badRows.first.map(({ line, what, hint }) => [String(line), what, hint]);
  return {
    exit: 0,
    json: imported,
    text: [
      `${imported.stars} stars in ${imported.files} files, ${imported.bytes} bytes, in ${imported.folder}.`,
      ...(names.of > 0 ? [namesWords(names)] : []),
      ...(imported.dropped.length > 0 ? [countTable("dropped", imported.dropped)] : []),
      ...(faults.length > 0
        ? [`${badRows.count} bad rows:`, table([badRows.countedBy, "what", "how to mend it"], faults)]
        : []),
    ].join("\n\n"),
  };
}

export const sky: Verb = {
  what: "the files of a sky: from the raw catalogue, or from a CSV file or VOTable of one's own",
  usage: "sky build RAW_FOLDER OUT_FOLDER | sky import FILE [--as NAME]",
  async run([act, ...args], io) {
    if (act === "build") return build(args, io);
    if (act === "import") return importOwn(args, io);
    if (act === undefined)
      throw new UsageError("ARGUMENTS", "what to do with the sky is missing", "write sky build or sky import");
    throw new UsageError("ARGUMENTS", `sky ${act} is unknown`, "what can be done: sky build, sky import");
  },
};
