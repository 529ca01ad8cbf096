/** The parser of arguments: strict, since a slip must not pass in silence. */
import { nearestWord } from "#core/lesson/nearestWord.ts";
import { UsageError } from "./usageError.ts";

/** `value` options take one value, as `--name value` or `--name=value`; `flag` options none. */
export type OptionKinds = Readonly<Record<string, "value" | "flag">>;
export type Parsed<Kinds extends OptionKinds> = {
  readonly options: { readonly [K in keyof Kinds]?: Kinds[K] extends "flag" ? true : string };
  readonly words: readonly string[];
};

/** Understood by every verb. */
const EVERYWHERE = { json: "flag" } as const;

function slip(message: string, hint: string): UsageError {
  return new UsageError("ARGUMENTS", message, hint);
}

function kindOf(name: string, kinds: OptionKinds): "value" | "flag" {
  const kind = Object.hasOwn(kinds, name) ? kinds[name] : undefined;
  if (kind) return kind;
  const near = nearestWord(name, Object.keys(kinds));
  const known = Object.keys(kinds).map((each) => `--${each}`);
  throw slip(`unknown option --${name}`, near ? `did you mean --${near}?` : `known: ${known.join(", ")}`);
}

function valueAfter(name: string, next: string | undefined): string {
  if (next === undefined) throw slip(`--${name} has no value`, `write --${name}=VALUE`);
  if (next.startsWith("-")) {
    const looksNegative = /^-[\d.]/.test(next);
    throw slip(`--${name} has no value`, `write --${name}=${looksNegative ? next : "VALUE"}`);
  }
  return next;
}

/**
 * Splits arguments into options and words.
 * @param words how many words there may be besides the options
 * @throws UsageError saying which argument is wrong and how to mend it
 */
export function parseArgs<const Kinds extends OptionKinds>(
  args: readonly string[],
  own: Kinds,
  words: { readonly least: number; readonly most: number; readonly what: string },
): Parsed<Kinds> {
  const kinds: OptionKinds = { ...EVERYWHERE, ...own };
  const options: Record<string, string | true> = {};
  const found: string[] = [];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i]!;
    if (!arg.startsWith("--")) {
      if (/^-\D/.test(arg)) throw slip(`unknown option ${arg}`, "options begin with two hyphens");
      found.push(arg);
      continue;
    }
    const [name = "", ...rest] = arg.slice(2).split("=");
    const inline = rest.length > 0 ? rest.join("=") : undefined;
    const kind = kindOf(name, kinds);
    if (name in options) throw slip(`--${name} is given twice`, "keep one");
    if (kind === "flag") {
      if (inline !== undefined) throw slip(`--${name} takes no value`, `write --${name} alone`);
      options[name] = true;
    } else {
      options[name] = inline ?? valueAfter(name, args[++i]);
      if (options[name] === "") throw slip(`--${name} has no value`, `write --${name}=VALUE`);
    }
  }
  if (found.length < words.least)
    throw slip(`${words.what} is missing`, "faintward help tells how each verb is called");
  if (found.length > words.most)
    throw slip(`"${found[words.most]}" is one word too many`, "put a value of several words in quotes");
  return { options: options as Parsed<Kinds>["options"], words: found };
}
