/**
 * Text to YAML document, in an order that no file can make dear: size, kind of text, then one pass of the lexer that counts
 * and stops early, and only then the parser (whose cost grows with the square of keys in a map, and with depth).
 */
import { type Document, isScalar, Lexer, LineCounter, parseDocument, visit } from "yaml";
import { type At, type Finding, finding } from "./findings.ts";
import { isTooLarge, LARGEST_BYTES } from "./largest.ts";

/** Columns that dashes and indentation may take before a line's own words: bounds the nesting of blocks. */
const DEEPEST_COLUMN = 60;
const DEEPEST_FLOW = 12;
/** Marks of structure (dash, colon, comma, bracket); a long lesson has three hundred. */
const MOST_MARKS = 2000;
const MOST_TOKENS = 10_000;
/** Each could be a slip of its own to the parser. */
const MOST_BACKSLASHES = 500;
/** More of them tell nothing new. */
const MOST_SYNTAX_FINDINGS = 20;

/** Where the parser's own words speak to programmers. */
const OWN_WORDS: Readonly<Record<string, string>> = {
  MULTIPLE_DOCS: "a second lesson begins here: one file, one lesson",
};

const OPENS = "[{";
const CLOSES = "]}";
const MARKS = "-:?,[]{}";
const REFUSED = { "&": "an anchor", "*": "an alias", "!": "a tag", "%": "a directive" } as const;
/** Signs of the lexer's own that stand for no text: document, end of a broken bracket, scalar. */
const SCALAR_FOLLOWS = "\u001f";
const LEXER_SIGNS: readonly string[] = ["\u0002", "\u0018", SCALAR_FOLLOWS];

export type Read =
  | { readonly doc: Document; readonly lines: LineCounter; readonly findings: readonly [] }
  | { readonly doc?: never; readonly lines?: never; readonly findings: readonly Finding[] };

/** The first character that no text has: a control character, or the sign of bytes that were no UTF-8. */
function strangePlace(text: string): At | null {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is sought
  const found = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\ufffd]/.exec(text);
  return found ? placeOf(text, found.index) : null;
}

function placeOf(text: string, offset: number): At {
  const before = text.slice(0, offset);
  return { line: before.split("\n").length, column: offset - before.lastIndexOf("\n") };
}

function backslashPlace(text: string): At | null {
  let at = -1;
  for (let count = 0; count <= MOST_BACKSLASHES; count++) {
    at = text.indexOf("\\", at + 1);
    if (at < 0) return null;
  }
  return placeOf(text, at);
}

/** A block nests no deeper than its lines are indented, dashes counted in. */
function deepLine(text: string): At | null {
  const found = new RegExp(`^(?:[ \\t]|[-?:](?=[ \\t\\r\\n]|$)){${DEEPEST_COLUMN},}`, "m").exec(text);
  return found ? placeOf(text, found.index) : null;
}

/** What the lexer finds that a lesson may not have. Stops at the first. */
function refuse(file: string, text: string): Finding | null {
  let offset = 0;
  let flow = 0;
  let marks = 0;
  let tokens = 0;
  let inScalar = false;
  const here = () => placeOf(text, offset);
  for (const token of new Lexer().lex(text)) {
    if (++tokens > MOST_TOKENS) return finding(file, "FW004", here(), "too many pieces for a lesson");
    if (LEXER_SIGNS.includes(token)) {
      inScalar = token === SCALAR_FOLLOWS;
      continue;
    }
    const first = token[0]!;
    if (!inScalar && token.length === 1 && MARKS.includes(first)) {
      if (OPENS.includes(first)) flow++;
      if (CLOSES.includes(first)) flow--;
      if (flow > DEEPEST_FLOW) return finding(file, "FW003", here(), `brackets nest deeper than ${DEEPEST_FLOW}`);
      if (flow < 0) return finding(file, "FW006", here(), `a "${first}" closes nothing`);
      if (++marks > MOST_MARKS) return finding(file, "FW004", here(), `more than ${MOST_MARKS} entries`);
    } else if (!inScalar && first in REFUSED) {
      return finding(file, "FW005", here(), `"${token.slice(0, 30)}" is ${REFUSED[first as keyof typeof REFUSED]}`);
    }
    inScalar = false;
    offset += token.length;
  }
  return null;
}

/** The parser's own findings, one a line, so that one slip does not shout ten times. */
function syntaxFindings(file: string, doc: Document, lines: LineCounter): Finding[] {
  const byLine = new Map<number, Finding>();
  for (const { code, message, pos } of [...doc.errors, ...doc.warnings]) {
    const { line, col } = lines.linePos(pos[0]);
    const place = { line: Math.max(1, line), column: Math.max(1, col) };
    if (!byLine.has(line) && byLine.size < MOST_SYNTAX_FINDINGS)
      byLine.set(line, finding(file, code === "DUPLICATE_KEY" ? "FW007" : "FW006", place, OWN_WORDS[code] ?? message));
  }
  return [...byLine.values()];
}

/** The one key that plain objects cannot bear, and that a schema would pass over in silence. */
function magicKeys(file: string, doc: Document, lines: LineCounter): Finding[] {
  const found: Finding[] = [];
  visit(doc, {
    Pair(_, { key }) {
      if (!isScalar(key) || key.value !== "__proto__") return;
      const { line, col } = lines.linePos(key.range?.[0] ?? 0);
      found.push(
        finding(
          file,
          "FW011",
          { line: Math.max(1, line), column: Math.max(1, col) },
          'no lesson has a key "__proto__"',
        ),
      );
    },
  });
  return found;
}

/** Reads a lesson's text. Never throws; where the text is refused, the findings say why and where. */
export function readYaml(file: string, text: string): Read {
  const start: At = { line: 1, column: 1 };
  if (isTooLarge(text)) return { findings: [finding(file, "FW001", start, `larger than ${LARGEST_BYTES} bytes`)] };
  const strange = strangePlace(text);
  if (strange) return { findings: [finding(file, "FW002", strange, "a character that no text has")] };
  const deep = deepLine(text);
  if (deep) return { findings: [finding(file, "FW003", deep, `indented by more than ${DEEPEST_COLUMN} columns`)] };
  const slashed = backslashPlace(text);
  if (slashed) return { findings: [finding(file, "FW004", slashed, `more than ${MOST_BACKSLASHES} backslashes`)] };
  const refused = refuse(file, text);
  if (refused) return { findings: [refused] };
  const lines = new LineCounter();
  const doc = parseDocument(text, { lineCounter: lines, prettyErrors: false, version: "1.2", schema: "core" });
  const findings = [...syntaxFindings(file, doc, lines), ...magicKeys(file, doc, lines)];
  return findings.length > 0 ? { findings } : { doc, lines, findings: [] };
}
