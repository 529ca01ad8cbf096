/** Which language the page speaks: the one that was chosen, else the one that the browser asks for. */
import { signal } from "@preact/signals";
import { say, translation } from "./say.ts";

const LANGUAGES = ["en", "de"] as const;
export type Language = (typeof LANGUAGES)[number];
/** What the reader chose; null where the browser is asked. */
export const chosenLanguage = signal<Language | null>(null);

/** A kept choice; null where it is none. */
export const readLanguage = (kept: unknown): Language | null => LANGUAGES.find((one) => one === kept) ?? null;
/** @param asked the browser's language, as "de-AT" */
export const languageFor = (chosen: Language | null, asked: string): Language =>
  chosen ?? (/^de\b/i.test(asked) ? "de" : "en");

/** Speaks a language from now on. German is fetched when it is first spoken; where it does not come, English stays. */
export async function speak(language: Language): Promise<void> {
  const words = language === "de" ? await import("./de.ts").catch(() => null) : null;
  translation.value = words?.DE ?? null;
  document.documentElement.lang = say("language.code");
}

/** The language that is not spoken. */
export const otherLanguage = (): Language => (translation.value ? "en" : "de");

/** Words in the middle of a sentence: English writes them small, German has nouns and keeps them. */
export const midSentence = (words: string): string => (translation.value ? words : words.toLowerCase());

/** Dates and times as the language writes them. */
export const dateFormat = (how: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat(say("language.dates"), how);

/** A waymark of a practice sky that has no name but says what it is, in the language; any other by its name. */
export const markName = (name: string): string => translation.value?.marks?.[name] ?? name;
