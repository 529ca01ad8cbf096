/** Finding a star, an object or a figure by what people call it. */
import type { Dir, ObjectKind, SkyObject } from "#core/seams/index.ts";
import { type ConstellationName, constellations } from "./constellations.ts";
import { plainDesignation, plainName, shortLetter } from "./letters.ts";
import { FIT, isOneSlip, type NameIndex, nameIndex } from "./nameIndex.ts";
import type { Figure, NamedStar, SkyNames } from "./types.ts";

export interface NameMatch {
  readonly kind: ObjectKind | "star" | "constellation" | "body";
  readonly name: string;
  readonly otherNames: readonly string[];
  readonly dir: Dir;
  /** V; null for a figure and for what gives no light. */
  readonly magV: number | null;
  /** Identifier of the object, or "HIP 91262" where the star has one. */
  readonly id?: string;
}
/** What can be found: the answer, and every plain name that leads to it. */
type Entry = { readonly thing: NameMatch; readonly keys: readonly string[] };
/** Something that moves (the Sun, a planet), where it stands now. */
export interface MovingBody {
  readonly name: string;
  readonly dir: Dir;
  readonly magV: number;
}

const ofNames = new WeakMap<SkyNames, NameIndex<NameMatch>>();
const ofObjects = new WeakMap<readonly SkyObject[], NameIndex<NameMatch>>();
/** The faintest come last, figures after them. */
const NO_MAG = 99;

/**
 * Matches for a name, best first: the very name; then the star whose letter is the same but for a raised number ("gamma And"
 * finds γ¹ And); then, from three characters on, names that begin so; and where there is none of these, from five on, names
 * with one typing slip in their letters (never in their numbers). Within each of these what bears it as its first name
 * ("Albireo" is the star, "beta Cyg" the pair), then the brighter, figures last. Capitals, spaces, accents and punctuation do
 * not matter; Greek letters may be signs, words or their first three letters; constellations abbreviated, Latin or in the
 * genitive; the lists of objects in short or in full ("Messier 31"). `bodies` are those of the moment. No match: an empty
 * list. The lists are indexed at the first call and kept with the lists themselves.
 */
export function findByName(
  query: string,
  names: SkyNames,
  objects: readonly SkyObject[],
  bodies: readonly MovingBody[] = [],
): NameMatch[] {
  const wanted = plainDesignation(plainName(query));
  if (wanted === "") return [];
  const found = [
    ...kept(ofNames, names, starAndFigureEntries).find(wanted),
    ...kept(ofObjects, objects, (list) => list.map(objectEntry)).find(wanted),
    ...nameIndex(bodies.map(bodyEntry)).find(wanted),
  ];
  const isAlias = ({ name }: NameMatch) => (plainName(name) === wanted || isOneSlip(wanted, plainName(name)) ? 0 : 1);
  const best = Math.min(...found.map(([, fit]) => fit));
  return found
    .filter(([, fit]) => fit !== FIT.slip || best === FIT.slip)
    .sort(
      ([one, fit], [other, otherFit]) =>
        fit - otherFit || isAlias(one) - isAlias(other) || (one.magV ?? NO_MAG) - (other.magV ?? NO_MAG),
    )
    .map(([match]) => match);
}

function kept<List extends object>(
  indexes: WeakMap<List, NameIndex<NameMatch>>,
  list: List,
  entriesOf: (list: List) => readonly Entry[],
): NameIndex<NameMatch> {
  const index = indexes.get(list) ?? nameIndex(entriesOf(list));
  indexes.set(list, index);
  return index;
}

function starAndFigureEntries(names: SkyNames): readonly Entry[] {
  const figureOf = new Map(names.figures.map((figure) => [figure.abbr, figure]));
  return [
    ...names.stars.map((star) => starEntry(star, figureOf.get(star.con ?? ""))),
    ...names.figures.map(figureEntry),
  ];
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
    thing: {
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
    thing: { kind: "constellation", name: figure.name, otherNames, dir: figure.centre, magV: null, id: figure.abbr },
    keys: [figure.name, ...otherNames].map(plainName),
  };
}

/** Abbreviation, name, and the genitive where the figure is one of the 88. */
function placesOf(figure: Figure): string[] {
  const known = constellations().get(figure.abbr);
  const genitive = known?.name === figure.name ? [known.genitive] : [];
  return [...new Set([figure.abbr, figure.name, ...genitive])];
}

/** Of a designation by letter or number the other spellings too: "beta Cyg" is "bet Cygni" and "β Cygnus". */
function objectEntry(object: SkyObject): Entry {
  const [name = object.id, ...otherNames] = object.names;
  const place = object.kind === "doubleStar" ? constellations().get(object.constellation) : undefined;
  const typed = place ? object.names.flatMap((each) => spellingsOf(each, place)) : [];
  const isDark = object.kind === "darkNebula";
  return {
    thing: {
      kind: object.kind,
      name,
      otherNames,
      dir: object.dir,
      magV: isDark ? null : object.magV,
      id: object.id,
    },
    keys: [...[object.id, ...object.names, ...object.names.flatMap(spoken)].map(plainName), ...typed],
  };
}

/** "Dumbbell" of "Dumbbell Nebula", so that a slip in it is found too. */
function spoken(name: string): string[] {
  const [, word] = /^(\S+) (?:Nebula|Galaxy|Cluster)$/.exec(name) ?? [];
  return word === undefined ? [] : [word];
}

function spellingsOf(designation: string, { abbr, name, genitive }: ConstellationName): string[] {
  if (!designation.endsWith(` ${abbr}`)) return [];
  const letter = plainName(designation.slice(0, -abbr.length));
  return [letter, shortLetter(letter)].flatMap((word) => [abbr, name, genitive].map((each) => word + plainName(each)));
}

function bodyEntry({ name, dir, magV }: MovingBody): Entry {
  return { thing: { kind: "body", name, otherNames: [], dir, magV }, keys: [plainName(name)] };
}
