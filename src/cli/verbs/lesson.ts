/** `lesson`: what is wrong with lesson files. */
import { resolve } from "node:path";
import { CATALOGUE, type Finding } from "#core/lesson/findings.ts";
import { checkLesson } from "#core/lesson/format.ts";
import { LARGEST_BYTES } from "#core/lesson/largest.ts";
import { realLookups } from "#core/lesson/realLookups.ts";
import { parseArgs } from "../args.ts";
import { readText } from "../files.ts";
import { textOf } from "../findingsText.ts";
import type { Verb } from "../io.ts";
import { sarifOf } from "../sarif.ts";
import { UsageError } from "../usageError.ts";

const MOST_FILES = 1000;
const FORMATS = ["text", "json", "sarif"] as const;

export const lesson: Verb = {
  what: "checks lesson files; every finding with place and mending",
  usage: "lesson FILE... [--format=text|json|sarif]",
  async run(args) {
    const { options, words } = parseArgs(
      args,
      { format: "value" },
      { least: 1, most: MOST_FILES, what: "a lesson file" },
    );
    const format = options.format ?? "text";
    if (!(FORMATS as readonly string[]).includes(format))
      throw new UsageError("ARGUMENTS", `--format ${format} is unknown`, `give ${FORMATS.join(", ")}`);
    const findings: Finding[] = [];
    for (const file of words) {
      const text = await readText(file, LARGEST_BYTES);
      findings.push(...checkLesson(file, text, realLookups).findings);
    }
    const json = format === "sarif" ? sarifOf(findings, (file) => resolve(file), CATALOGUE) : findings;
    const nothing = words.length === 1 ? `${words[0]}: no findings.` : `${words.length} files: no findings.`;
    return {
      exit: findings.length > 0 ? 1 : 0,
      json,
      text: format === "text" ? textOf(findings) || nothing : JSON.stringify(json),
    };
  },
};
