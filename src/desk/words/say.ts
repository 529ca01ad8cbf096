/**
 * Words of the page come from one typed catalogue. A text names its figures in braces: "costs {points}"; a missing key or a
 * missing figure is a type error. English comes with the page; another language takes its place as a whole.
 */
import { signal } from "@preact/signals";
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

/** A section in another language: the same keys. */
export type InWords<Section> = { readonly [Name in keyof Section]: string };
/** All sections in another language, those that come later too. */
export type Translation = Readonly<Record<string, Readonly<Record<string, string>>>>;
/** What takes the place of English; null where English is spoken. Who says something is drawn anew when it changes. */
export const translation = signal<Translation | null>(null);

/** A figure, made as machines write it, with the decimal mark of the language. */
export const written = (figure: string | number): string => String(figure).replace(".", say("language.decimal"));
/** A figure with so many decimals, as the language writes it. */
export const fixed = (value: number, digits: number): string => written(value.toFixed(digits));

/** Fills the braces of a text. A brace without its figure stays: the text's own words are not lost. */
export const filled = (text: string, figures: Readonly<Record<string, string | number>>): string =>
  text.replace(/\{(\w+)\}/g, (brace, name: string) => {
    const figure = figures[name];
    return typeof figure === "number" ? written(figure) : (figure ?? brace);
  });

/**
 * The words of a key.
 * @param figures what stands in the braces; not asked for where there are none
 */
export function say<K extends Key>(
  key: K,
  ...figures: [FigureOf<TextOf<K>>] extends [never] ? [] : [FiguresOf<K>]
): string {
  const [section, name] = key.split(".") as [Section, string];
  const words: Readonly<Record<string, string>> = translation.value?.[section] ?? EN[section];
  const text = words[name] ?? key;
  return filled(text, figures[0] ?? {});
}

/** Words in the middle of a sentence: English writes them small, German has nouns and keeps them. */
export const midSentence = (words: string): string => (translation.value ? words : words.toLowerCase());

/** A waymark of a practice sky that has no name but says what it is, in the language; any other by its name. */
export const markName = (name: string): string => translation.value?.marks?.[name] ?? name;

/** Dates and times as the language writes them. */
export const dateFormat = (how: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat(say("language.dates"), how);
