/** Days in words. */
import { dateFormat } from "../words/say.ts";
import { sayStart } from "./words.ts";

const DAY_MS = 86_400_000;
const dayOf = (date: Date): number => Math.floor((date.getTime() - date.getTimezoneOffset() * 60_000) / DAY_MS);

/** "today", "yesterday", "on Tuesday" within a week, else "on 3 May". */
export function dayWords(atMs: number, nowMs: number): string {
  const [then, now] = [new Date(atMs), new Date(nowMs)];
  const ago = dayOf(now) - dayOf(then);
  if (ago === 0) return sayStart("today");
  if (ago === 1) return sayStart("yesterday");
  const how: Intl.DateTimeFormatOptions = ago > 0 && ago < 7 ? { weekday: "long" } : { day: "numeric", month: "long" };
  return sayStart("onDate", { date: dateFormat(how).format(then) });
}

/** "21:04", by the reader's clock. */
export const clockWords = (atMs: number): string =>
  dateFormat({ hour: "2-digit", minute: "2-digit" }).format(new Date(atMs));
