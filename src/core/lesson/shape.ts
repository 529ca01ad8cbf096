/** The shape of a lesson: what the schema finds, told in words with what was meant. */
import * as z from "zod/mini";
import { type Finding, type FindingCode, finding } from "./findings.ts";
import type { Path, Places } from "./locate.ts";
import { nearestWord } from "./nearestWord.ts";
import { HABIT_CODES, LessonSchema } from "./schema.ts";
import type { Lesson } from "./types.ts";

type Issue = z.core.$ZodIssue;
type Said = readonly [code: FindingCode, message: string, hint?: string | undefined];
/** As much of JSON Schema as the lesson's has. */
type Shape = {
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly items?: Shape | false;
  readonly prefixItems?: readonly Shape[];
  readonly anyOf?: readonly Shape[];
};

const WHAT = {
  string: "text",
  number: "a number",
  int: "a whole number",
  boolean: "true or false",
  array: "a list",
  tuple: "a list",
  object: "a group of keys",
  record: "a group of keys",
} as const;

/** JSON Schema of a lesson file (draft 2020-12): editors complete and check by it. */
export const lessonJsonSchema = (): unknown => ({
  ...z.toJSONSchema(LessonSchema, { io: "input" }),
  title: "Faintward lesson, format 1",
});

/** Keys that the schema knows at a path, all alternatives together. */
function keysAt(path: Path): string[] {
  const step = (shapes: readonly Shape[], key: PropertyKey): Shape[] =>
    shapes.flatMap(({ properties, items, prefixItems, anyOf }) => {
      if (anyOf) return step(anyOf, key);
      if (typeof key !== "number") return properties?.[String(key)] ?? [];
      return prefixItems?.[key] ?? (items || []);
    });
  const open = (shapes: readonly Shape[]): readonly Shape[] =>
    shapes.flatMap((shape) => (shape.anyOf ? open(shape.anyOf) : [shape]));
  const start: readonly Shape[] = [lessonJsonSchema() as Shape];
  const shapes = path.reduce<readonly Shape[]>(step, start);
  return open(shapes).flatMap(({ properties }) => Object.keys(properties ?? {}));
}

const valueAt = (value: unknown, path: Path): unknown =>
  path.reduce<unknown>((v, key) => (typeof v === "object" && v !== null ? Reflect.get(v, key) : undefined), value);

const brief = (value: unknown) => {
  const text =
    typeof value === "object" && value !== null
      ? Array.isArray(value)
        ? "a list"
        : "a group of keys"
      : typeof value === "number"
        ? String(value)
        : JSON.stringify(value);
  return text === undefined ? "nothing" : text.length > 40 ? `${text.slice(0, 37)}...` : text;
};
const nameOf = (path: Path) =>
  path.reduce<string>(
    (name, key) => (typeof key === "number" ? `${name}[${key + 1}]` : name ? `${name}.${String(key)}` : String(key)),
    "",
  ) || "the lesson";
const meant = (word: string | undefined) => (word === undefined ? undefined : `Did you mean "${word}"?`);

/** The alternative that the value most likely wants to be: of its own type, with the fewest slips. */
function alternative(issue: Issue & { code: "invalid_union" }): Issue[] {
  const misfits = (issues: readonly Issue[]) =>
    issues.some(({ code, path }) => code === "invalid_type" && path.length === 0) ? 1000 : issues.length;
  const [best] = [...issue.errors].sort((a, b) => misfits(a as Issue[]) - misfits(b as Issue[]));
  return (best ?? []).map((inner) => ({ ...inner, path: [...issue.path, ...inner.path] }) as Issue);
}

function sayInvalidType(issue: Issue & { code: "invalid_type" }, value: unknown, path: Path): Said {
  if (value === undefined) return ["FW010", `${nameOf(path)} is missing`];
  const wanted = WHAT[issue.expected as keyof typeof WHAT] ?? issue.expected;
  return ["FW012", `${nameOf(path)} is ${brief(value)}; it should be ${wanted}`];
}

function saySize(issue: Issue & { code: "too_small" | "too_big" }, path: Path): Said {
  const few = issue.code === "too_small";
  const bound = few ? issue.minimum : issue.maximum;
  const unit = issue.origin === "string" ? " characters" : issue.origin === "array" ? " entries" : "";
  return ["FW013", `${nameOf(path)} must be ${few ? "at least" : "at most"} ${bound}${unit}${unit ? " long" : ""}`];
}

function sayValue(issue: Issue & { code: "invalid_value" }, value: unknown, path: Path): Said {
  if (value === undefined) return ["FW010", `${nameOf(path)} is missing`];
  if (path.length === 1 && path[0] === "format") return ["FW015", `format ${brief(value)} is not known`];
  const words = issue.values.map(String);
  return [
    "FW014",
    `${nameOf(path)} is ${brief(value)}; it should be one of ${words.join(", ")}`,
    meant(nearestWord(String(value), words)),
  ];
}

const FORM: Readonly<Record<string, string>> = {
  time: "UTC as in 2027-08-31T21:00:00Z",
  epoch: "a day as in 2027-08-31T00:00:00Z",
  perihelion: "an instant as in 2027-09-30T04:48:00Z",
  id: "small letters and figures with hyphens, such as 3-03",
  practice: "a word of small letters, figures and hyphens",
};

function sayFormat(value: unknown, path: Path): Said {
  const form = FORM[String(path.at(-1))] ?? "small letters, figures and hyphens";
  return ["FW013", `${nameOf(path)} is ${brief(value)}; it should be ${form}`];
}

function sayIssue(issue: Issue, value: unknown): Said {
  const { path } = issue;
  switch (issue.code) {
    case "invalid_type":
      return sayInvalidType(issue, value, path);
    case "too_small":
    case "too_big":
      return saySize(issue, path);
    case "invalid_value":
      return sayValue(issue, value, path);
    case "invalid_format":
      return sayFormat(value, path);
    case "invalid_key":
      return [
        "FW011",
        `"${String(path.at(-1))}" is no code of a habit`,
        meant(nearestWord(String(path.at(-1)), HABIT_CODES)) ?? "Codes look like INV-KEEP.",
      ];
    default:
      return ["FW012", `${nameOf(path)} is ${brief(value)}: ${issue.message}`];
  }
}

function findingsOf(file: string, issue: Issue, places: Places, root: unknown): Finding[] {
  if (issue.code === "invalid_union" && issue.errors.length > 0)
    return alternative(issue).flatMap((inner) => findingsOf(file, inner, places, root));
  if (issue.code === "unrecognized_keys") {
    const known = keysAt(issue.path);
    return issue.keys.map((key) =>
      finding(
        file,
        "FW011",
        places.key(issue.path, key),
        `${nameOf(issue.path)} has no key "${key.slice(0, 40)}"`,
        meant(nearestWord(key, known)),
      ),
    );
  }
  const value = valueAt(root, issue.path);
  const [code, message, hint] = sayIssue(issue, value);
  const at =
    issue.code === "invalid_key"
      ? places.key(issue.path.slice(0, -1), String(issue.path.at(-1)))
      : places.value(issue.path);
  return [finding(file, code, at, message, hint)];
}

/** A plain value against the schema: the lesson with its defaults, or everything that is wrong. */
export function checkShape(file: string, value: unknown, places: Places): { lesson?: Lesson; findings: Finding[] } {
  const result = LessonSchema.safeParse(value);
  if (result.success) return { lesson: result.data, findings: [] };
  return { findings: result.error.issues.flatMap((issue) => findingsOf(file, issue, places, value)) };
}
