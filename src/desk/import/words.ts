import { EN_IMPORT } from "../words/en.import.ts";
import { say as sayOfPage } from "../words/say.ts";
import { sayLater } from "../words/sayLater.ts";
import type { Ending, Running } from "./desk.ts";
import type { OwnCatalogue } from "./ownBase.ts";

export const say = sayLater("import", EN_IMPORT);

export const count = (value: number): string => value.toLocaleString(sayOfPage("language.dates"));

/** A name from outside without what turns or hides letters, cut to a length that fits. */
export const shownName = (name: string): string => name.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, "").slice(0, 60);

/** The file's share that has been read, whole percent. */
export const percentOf = ({ progress: { doneBytes, ofBytes } }: Running): number =>
  ofBytes > 0 ? Math.floor((100 * doneBytes) / ofBytes) : 100;

export function progressWords(running: Running): string {
  const { stage, rows } = running.progress;
  const name = shownName(running.fileName);
  if (stage === "reading") return say("reading", { name, rows: count(rows), percent: percentOf(running) });
  return say(stage, { rows: count(rows) });
}

const sentence = (text: string) => text.trim().replace(/\.$/, "");

/** What happened last, in words. `own`: what is there now. */
export function endingWords(ending: Ending, own: OwnCatalogue | null): string {
  if (ending.kind === "taken")
    return own ? say("taken", { name: shownName(own.fileName), stars: count(own.stars) }) : "";
  if (ending.kind === "cancelled") return say(own ? "cancelled" : "cancelledNone");
  if (ending.kind !== "failed") return say("removed");
  const { why, what, hint } = ending;
  const words =
    why === "file"
      ? say("badFile", { what: sentence(what), hint })
      : why === "other"
        ? say("other", { what: sentence(what) })
        : say(why);
  return own ? `${words} ${say("unchanged")}` : words;
}
