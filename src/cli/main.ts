/** The command line: a verb, its arguments, one answer. */
import { nearestWord } from "#core/lesson/nearestWord.ts";
import { AppError } from "#core/seams/errors.ts";
import type { Io, Verb } from "./io.ts";
import { oneLine } from "./oneLine.ts";
import { UsageError } from "./usageError.ts";
import { lesson } from "./verbs/lesson.ts";
import { limit } from "./verbs/limit.ts";
import { name } from "./verbs/name.ts";
import { place } from "./verbs/place.ts";
import { score } from "./verbs/score.ts";
import { see } from "./verbs/see.ts";
import { sky } from "./verbs/sky.ts";
import { stars } from "./verbs/stars.ts";
import { view } from "./verbs/view.ts";

const VERBS: Readonly<Record<string, Verb>> = { stars, name, place, view, limit, see, lesson, score, sky };

const help = (): string => {
  const lines = Object.values(VERBS).map(({ what, usage }) => `  faintward ${usage}\n      ${what}`);
  return ["faintward VERB ... [--json]", ...lines].join("\n");
};

function verbOf(word: string | undefined): Verb {
  const verbs = Object.keys(VERBS).join(", ");
  if (word === undefined) throw new UsageError("ARGUMENTS", "no verb is given", `verbs: ${verbs}`);
  if (Object.hasOwn(VERBS, word)) return VERBS[word]!;
  const near = nearestWord(word, Object.keys(VERBS));
  throw new UsageError("ARGUMENTS", `unknown verb ${word}`, `${near ? `did you mean ${near}? ` : ""}verbs: ${verbs}`);
}

/** A refusal of the machine's (no room, no right, no such folder) is the caller's to mend; anything else is a bug. */
function asAppError(error: unknown): AppError {
  if (error instanceof AppError) return error;
  const { syscall, message } = error as NodeJS.ErrnoException;
  if (syscall === undefined) throw error;
  return new UsageError("FILE", message, "check the path, its rights and the room on the disk");
}

function errorJson(error: AppError): unknown {
  const place = error instanceof UsageError ? error.place : undefined;
  return { error: { code: error.code, message: error.message, hint: error.hint, ...place } };
}

/**
 * Runs the command line and prints its answer.
 * @returns the exit code: 0 answered, 1 the answer is "no", 2 unusable arguments or file
 */
export async function main(args: readonly string[], root: string): Promise<number> {
  const wantsJson = args.includes("--json");
  const [word, ...rest] = args.filter((arg) => arg !== "--json");
  if (word === "help" || args.includes("--help")) {
    process.stdout.write(`${help()}\n`);
    return 0;
  }
  const isTerminal = process.stderr.isTTY === true;
  const progress = (line: string) => {
    if (isTerminal) process.stderr.write(`${line}\n`);
  };
  const io: Io = { root, isTerminal, progress };
  try {
    const { exit, json, text } = await verbOf(word).run(rest, io);
    process.stdout.write(`${wantsJson ? JSON.stringify(json) : text}\n`);
    return exit;
  } catch (thrown) {
    const error = asAppError(thrown);
    process.stderr.write(`faintward: ${oneLine(`${error.message}; ${error.hint}`)}\n`);
    if (wantsJson) process.stdout.write(`${JSON.stringify(errorJson(error))}\n`);
    return 2;
  }
}
