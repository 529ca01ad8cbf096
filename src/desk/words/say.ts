/**
 * Words of the page come from one typed catalogue. A text names its figures in braces: "costs {points}"; a missing key or a
 * missing figure is a type error.
 */
import { EN } from "./en.ts";

type Catalogue = typeof EN;
export type Section = keyof Catalogue;
export type Key = { [S in Section]: `${S}.${Extract<keyof Catalogue[S], string>}` }[Section];
type TextOf<K extends Key> = K extends `${infer S}.${infer Name}`
  ? S extends Section
    ? Name extends keyof Catalogue[S]
      ? Catalogue[S][Name]
      : never
    : never
  : never;
/** Names of the figures that a text asks for. */
export type FigureOf<Text> = Text extends `${string}{${infer Name}}${infer Rest}` ? Name | FigureOf<Rest> : never;
type FiguresOf<K extends Key> = Record<FigureOf<TextOf<K>>, string | number>;

/** Fills the braces of a text. A brace without its figure stays: the text's own words are not lost. */
export const filled = (text: string, figures: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (brace, name: string) => (Object.hasOwn(figures, name) ? String(figures[name]) : brace));

/**
 * The words of a key.
 * @param figures what stands in the braces; not asked for where there are none
 */
export function say<K extends Key>(
  key: K,
  ...figures: [FigureOf<TextOf<K>>] extends [never] ? [] : [FiguresOf<K>]
): string {
  const [section, name] = key.split(".") as [Section, string];
  const text = (EN[section] as Readonly<Record<string, string>>)[name] ?? key;
  return filled(text, figures[0] ?? {});
}
