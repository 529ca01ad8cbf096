/**
 * The part of XML 1.0 that a table needs, as a stream, and nothing that can be turned against the reader: no declarations of
 * entities, no text beyond a length, no depth beyond a bound.
 */
import { InputError } from "#core/seams/errors.ts";

export type XmlSink = {
  /** Names without their prefix. */
  readonly open: (name: string, attributes: ReadonlyMap<string, string>, line: number) => void;
  readonly text: (text: string) => void;
  readonly close: (name: string, line: number) => void;
  /** True where text may be of any length: it is then handed on as it comes, without entities. */
  readonly isLong?: () => boolean;
};
export type XmlStream = { readonly push: (text: string) => void; readonly finish: () => void };

const LONGEST_PIECE = 65_536;
const DEEPEST = 32;
const ENTITIES: Readonly<Record<string, string>> = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };
const TAG = /^<(\/?)([A-Za-z_][\w.:-]*)((?:\s+[\w.:-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>$/;
const ATTRIBUTE = /([\w.:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

const bare = (name: string) => name.slice(name.indexOf(":") + 1);

/** Reads elements and text; the same calls come whatever the pieces, but for how a text is cut. Throws InputError on refusal. */
export function readXml(sink: XmlSink): XmlStream {
  let rest = "";
  let line = 1;
  const path: string[] = [];

  const refuse = (what: string, hint = "Export the table again as a VOTable."): never => {
    throw new InputError(`Line ${line}: ${what}`, hint);
  };
  const decode = (text: string): string =>
    text.includes("&")
      ? text.replaceAll(/&(?:#(\d{1,7})|#x([0-9a-fA-F]{1,6})|([^;&]{0,32}));?/g, (_all, decimal, hex, name) => {
          const code = decimal ? Number(decimal) : hex ? Number.parseInt(hex, 16) : -1;
          if (code >= 0 && code <= 0x10ffff) return String.fromCodePoint(code);
          return Object.hasOwn(ENTITIES, name ?? "") ? ENTITIES[name]! : refuse("an entity that XML does not know");
        })
      : text;
  const advance = (text: string) => {
    for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) line += 1;
  };
  const tag = (text: string) => {
    const match = TAG.exec(text) ?? refuse("a tag cannot be read");
    const name = bare(match[2]!);
    if (match[1]) {
      if (path.pop() !== name) refuse(`</${name.slice(0, 40)}> closes what is not open`);
      return sink.close(name, line);
    }
    const attributes = new Map<string, string>();
    for (const [, key, double, single] of match[3]!.matchAll(ATTRIBUTE))
      attributes.set(bare(key!), decode(double ?? single ?? ""));
    sink.open(name, attributes, line);
    if (match[4]) return sink.close(name, line);
    path.push(name);
    if (path.length > DEEPEST) refuse(`elements nested over ${DEEPEST} deep`);
  };
  /** Where the piece of markup that begins at `start` ends; -1 where its end is not here yet. */
  const markupEnd = (start: number): number => {
    const until = (mark: string) => {
      const at = rest.indexOf(mark, start);
      return at < 0 ? -1 : at + mark.length;
    };
    if (rest.startsWith("<!--", start)) return until("-->");
    if (rest.startsWith("<![CDATA[", start)) return until("]]>");
    if (rest.startsWith("<?", start)) return until("?>");
    if ("<!--".startsWith(rest.slice(start)) || "<![CDATA[".startsWith(rest.slice(start))) return -1;
    if (rest.startsWith("<!", start))
      refuse("declarations (DOCTYPE, ENTITY) are not read", "Take the <!DOCTYPE ...> out.");
    for (let at = start, quote = ""; at < rest.length; at++) {
      const letter = rest[at]!;
      if (quote) quote = letter === quote ? "" : quote;
      else if (letter === '"' || letter === "'") quote = letter;
      else if (letter === ">") return at + 1;
    }
    return -1;
  };
  const markup = (text: string) => {
    if (text.length > LONGEST_PIECE) refuse("a tag is over 65,536 characters");
    if (text.startsWith("<![CDATA[")) sink.text(text.slice(9, -3));
    else if (!text.startsWith("<!--") && !text.startsWith("<?")) tag(text);
    advance(text);
  };
  return {
    push(more) {
      rest += more;
      let start = 0;
      for (;;) {
        const open = rest.indexOf("<", start);
        const textEnd = open < 0 ? rest.length : open;
        const isLong = sink.isLong?.() ?? false;
        if (textEnd - start > LONGEST_PIECE && !isLong) refuse("a text is over 65,536 characters");
        if (isLong && textEnd > start) {
          const text = rest.slice(start, textEnd);
          sink.text(text);
          advance(text);
          start = textEnd;
        }
        if (open < 0) break;
        if (open > start) {
          const text = rest.slice(start, open);
          if (path.length === 0 && text.trim() !== "") refuse("text outside of all elements");
          sink.text(decode(text));
          advance(text);
        }
        start = open;
        const end = markupEnd(open);
        if (end < 0) {
          if (rest.length - open > LONGEST_PIECE) refuse("a tag is over 65,536 characters");
          break;
        }
        markup(rest.slice(open, end));
        start = end;
      }
      rest = rest.slice(start);
    },
    finish() {
      if (path.length > 0 || rest.trim() !== "")
        refuse("the file ends in the middle", "The file was cut off: get it again.");
    },
  };
}
