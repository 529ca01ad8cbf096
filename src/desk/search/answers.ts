/** Answers to what was typed, as words: what it is, and where. Nothing here knows where the tube points. */
import { constellationOf } from "#core/celestial/constellation.ts";
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { constellations } from "#core/sky/names/constellations.ts";
import { findByName, type NameMatch } from "#core/sky/names/findByName.ts";
import { plainName } from "#core/sky/names/letters.ts";
import { saySheet } from "../sheet/words.ts";
import { looksOf } from "../words/looks.ts";
import { fixed, say } from "../words/say.ts";
import type { SearchedSky } from "./searched.ts";
import { saySearch } from "./words.ts";

export interface Answer {
  readonly match: NameMatch;
  readonly sky: SearchedSky;
}

const MOST = 8;
const MINUS = "−";
/** A sky that knows the very name comes before one that knows one like it. */
const ORDER = { same: 0, begins: 1, other: 2 } as const;

function orderOf(wanted: string, { name, otherNames, id }: NameMatch): number {
  const plain = [name, ...otherNames, id ?? ""].map(plainName);
  if (plain.includes(wanted)) return ORDER.same;
  return plain.some((each) => each.startsWith(wanted)) ? ORDER.begins : ORDER.other;
}

/** The best matches of all skies, best first; at most eight. */
export function answersTo(query: string, skies: readonly SearchedSky[]): Answer[] {
  const wanted = plainName(query);
  const all = skies.flatMap((sky) =>
    findByName(query, sky.names, sky.objects, sky.bodies)
      .slice(0, MOST)
      .map((match) => ({ match, sky, order: orderOf(wanted, match) })),
  );
  // Sorting keeps the order of equals: within a sky the ranking is its own.
  return all.sort((a, b) => a.order - b.order).slice(0, MOST);
}

const kindWords = (kind: NameMatch["kind"]): string =>
  kind === "star" || kind === "constellation" || kind === "body" ? saySearch(`${kind}`) : saySheet(`${kind}`);

/** "galaxy in Andromeda, magnitude 3.4". */
export function whatWords({ match, sky }: Answer): string {
  const { kind, magV, dir } = match;
  const what = kindWords(kind);
  const where = kind !== "constellation" && sky.seed === null ? constellationOf(dir).name : null;
  const placed = where ? saySearch("inConstellation", { what, where }) : what;
  return magV === null ? placed : saySearch("ofMagnitude", { what: placed, magV: fixed(magV, 1).replace("-", MINUS) });
}

/** Right ascension and declination as a catalogue prints them. */
export function placeWords(dir: Dir): string {
  const { raRad, decRad } = radecFromDir(dir);
  const tenths = Math.round((raRad / DEG / 15) * 600) % 14_400;
  const minutes = Math.round((Math.abs(decRad) / DEG) * 60);
  const two = (value: number) => String(value).padStart(2, "0");
  return saySearch("place", {
    hours: Math.floor(tenths / 600),
    minutes: fixed((tenths % 600) / 10, 1),
    sign: decRad < 0 && minutes > 0 ? MINUS : "+",
    degrees: Math.floor(minutes / 60),
    arcmin: two(minutes % 60),
  });
}

/** What more there is to say: the line on its looks, what a constellation's name means, which sky it is of. */
export function moreWords({ match, sky }: Answer): string[] {
  const words: string[] = [];
  const object = sky.objects.find(({ id }) => id === match.id);
  if (object) words.push(looksOf(object));
  const language = say("language.code") === "de" ? "de" : "en";
  const meaning =
    match.kind === "constellation" && sky.seed === null
      ? constellations().get(match.id ?? "")?.meaning[language]
      : null;
  if (meaning) words.push(saySearch("meaning", { meaning }));
  const lore = match.kind === "constellation" && sky.names.figures.find(({ abbr }) => abbr === match.id)?.lore;
  if (lore) words.push(lore);
  if (sky.isOwn) words.push(saySearch("ofOwn"));
  if (sky.seed !== null) words.push(saySearch("ofSky", { seed: sky.seed }));
  return words;
}
