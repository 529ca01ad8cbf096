/** Files that come to the bench and go from it. Names and texts from outside are data: shown as text, never as anything else. */
import { LARGEST_BYTES } from "#core/lesson/largest.ts";

export interface NamedText {
  readonly name: string;
  readonly text: string;
}
export type ReadFile = { readonly file: NamedText } | { readonly refused: "large" | "unreadable"; readonly kB: number };

const LONGEST_NAME = 60;

export const kBOf = (bytes: number): number => Math.ceil(bytes / 1024);

/** A name without what turns or hides letters, cut to a length that fits. */
export const shownName = (name: string): string =>
  name.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "").slice(0, LONGEST_NAME);

/** Line ends as a text field keeps them. */
export const plainLines = (text: string): string => text.replace(/\r\n?/g, "\n");

/** Reads a file of a lesson's size; a larger one is refused before a byte of it is read. */
export async function readFile(file: Pick<File, "name" | "size" | "text">): Promise<ReadFile> {
  const kB = kBOf(file.size);
  if (file.size > LARGEST_BYTES) return { refused: "large", kB };
  try {
    return { file: { name: shownName(file.name), text: plainLines(await file.text()) } };
  } catch {
    return { refused: "unreadable", kB };
  }
}

/** What a saved text is called: its own id, else the name it came with. */
export function fileNameFor({ name, text }: NamedText): string {
  const id = /^id:[ \t]*["']?([\w.-]{1,40})/m.exec(text)?.[1];
  const stem = (id ?? name.replace(/\.ya?ml$/i, "")).replace(/[^\w.-]+/g, "-").replace(/^[.-]+/, "");
  return `${stem || "lesson"}.yaml`;
}

/** Hands the text to the reader's machine as a file. */
export function saveAsFile(file: NamedText): void {
  const url = URL.createObjectURL(new Blob([file.text], { type: "text/yaml;charset=utf-8" }));
  const link = document.createElement("a");
  link.href = url;
  link.download = fileNameFor(file);
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
