/** Which language the page speaks: the one that was chosen, else the one that the browser asks for. */
import type { Language } from "../app/state.ts";
import { say, translation } from "./say.ts";

/** A kept choice; null where it is none. */
export const readLanguage = (kept: unknown): Language | null => (kept === "de" || kept === "en" ? kept : null);
/** @param asked the browser's language, as "de-AT" */
export const languageFor = (chosen: Language | null, asked: string): Language =>
  chosen ?? (/^de\b/i.test(asked) ? "de" : "en");

/** Speaks a language from now on. German is fetched when it is first spoken; where it does not come, English stays. */
export async function speak(language: Language): Promise<void> {
  const words = language === "de" ? await import("./de.ts").catch(() => null) : null;
  translation.value = words?.DE ?? null;
  document.documentElement.lang = say("language.code");
}
