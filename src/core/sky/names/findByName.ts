/** Finding a star, an object or a figure by what people call it. */
import type { Dir, ObjectKind, SkyObject } from "#core/seams/index.ts";
import { constellations } from "./constellations.ts";
import { plainName, shortLetter } from "./letters.ts";
import type { Figure, NamedStar, SkyNames } from "./types.ts";

export interface NameMatch {
  readonly kind: ObjectKind | "star" | "constellation";
  readonly name: string;
  readonly otherNames: readonly string[];
  readonly dir: Dir;
  /** V; null for a figure. */
  readonly magV: number | null;
  /** Identifier of the object, or "HIP 91262" where the star has one. */
  readonly id?: string;
}
/** What can be found: the answer, and every plain name that leads to it. */
type Entry = { readonly match: NameMatch; readonly keys: readonly string[] };

const SHORTEST_BEGINNING = 3;
const indexed = new WeakMap<SkyNames, readonly Entry[]>();

/**
 * Matches for a name, best first: the very name; then the star whose letter is the same but for a raised number ("gamma And"
 * finds γ¹ And); then, from three characters on, names that begin so. Within each of these the brighter first, figures
 * last. Capitals, spaces, accents and punctuation do not matter; Greek letters may be signs, words or their first three
 * letters; constellations abbreviated, Latin or in the genitive. No match: an empty list.
 */
export function findByName(query: string, names: SkyNames, objects: readonly SkyObject[]): NameMatch[] {
  const wanted = plainName(query);
  if (wanted === "") return [];
  const found: { readonly match: NameMatch; readonly grade: number }[] = [];
  for (const { match, keys } of [...starAndFigureEntries(names), ...objects.map(objectEntry)]) {
    const grade = gradeOf(wanted, keys);
    if (grade !== null) found.push({ match, grade });
  }
  found.sort((a, b) => a.grade - b.grade || (a.match.magV ?? 99) - (b.match.magV ?? 99));
  return found.map(({ match }) => match);
}

/** 0 the same, 1 the same but for a raised number, 2 a beginning; null no match. */
function gradeOf(wanted: string, keys: readonly string[]): number | null {
  if (keys.includes(wanted)) return 0;
  const unraised = withoutRaised(wanted);
  if (keys.some((key) => withoutRaised(key) === wanted || key === unraised)) return 1;
  return wanted.length >= SHORTEST_BEGINNING && keys.some((key) => begins(key, wanted)) ? 2 : null;
}

/** What follows must be a letter, so that no number is cut short ("m10" begins no "m101") and "HIP" alone is no name. */
function begins(key: string, wanted: string): boolean {
  return key.startsWith(wanted) && /^[a-z]/.test(key.slice(wanted.length));
}

/** "gamma2sgr" without its 2; names with digits elsewhere ("m27", "12aql") stay as they are. */
function withoutRaised(key: string): string {
  return key.replace(/^([a-z]{2,})\d([a-z]{3,})$/, "$1$2");
}

function starAndFigureEntries(names: SkyNames): readonly Entry[] {
  const known = indexed.get(names);
  if (known) return known;
  const figureOf = new Map(names.figures.map((figure) => [figure.abbr, figure]));
  const made = [
    ...names.stars.map((star) => starEntry(star, figureOf.get(star.con ?? ""))),
    ...names.figures.map(figureEntry),
  ];
  indexed.set(names, made);
  return made;
}

function starEntry(star: NamedStar, figure: Figure | undefined): Entry {
  const places = figure ? placesOf(figure) : [];
  const number = star.flamsteed === undefined ? [] : [String(star.flamsteed)];
  const labels = [...new Set([star.label, ...number])];
  const hip = star.hip === undefined ? [] : [`HIP ${star.hip}`];
  const shown = labels.flatMap((label) => places.filter((p) => p !== figure?.name).map((place) => `${label} ${place}`));
  const [name = star.label, ...otherNames] = [...(star.proper ? [star.proper] : []), ...shown, ...hip];
  const letter = plainName(star.label);
  const typed = [letter, shortLetter(letter), ...number].flatMap((word) => places.map((p) => word + plainName(p)));
  return {
    match: {
      kind: "star",
      name,
      otherNames,
      dir: star.dir,
      magV: star.magV,
      ...(hip[0] ? { id: hip[0] } : {}),
    },
    keys: [...[name, ...otherNames].map(plainName), ...typed],
  };
}

function figureEntry(figure: Figure): Entry {
  const otherNames = placesOf(figure).filter((word) => word !== figure.name);
  return {
    match: { kind: "constellation", name: figure.name, otherNames, dir: figure.centre, magV: null, id: figure.abbr },
    keys: [figure.name, ...otherNames].map(plainName),
  };
}

/** Abbreviation, name, and the genitive where the figure is one of the 88. */
function placesOf(figure: Figure): string[] {
  const known = constellations().get(figure.abbr);
  const genitive = known?.name === figure.name ? [known.genitive] : [];
  return [...new Set([figure.abbr, figure.name, ...genitive])];
}

function objectEntry(object: SkyObject): Entry {
  const [name = object.id, ...otherNames] = object.names;
  return {
    match: { kind: object.kind, name, otherNames, dir: object.dir, magV: object.magV, id: object.id },
    keys: [object.id, ...object.names].map(plainName),
  };
}
