import table from "#shared/constellations.json";

export interface ConstellationName {
  readonly abbr: string;
  readonly name: string;
  readonly genitive: string;
  /** What the figure is, with its article. */
  readonly meaning: { readonly en: string; readonly de: string };
}

const BY_ABBR: ReadonlyMap<string, ConstellationName> = new Map(
  Object.entries(table.constellations).map(([abbr, [name = abbr, genitive = abbr, en = "", de = ""]]) => [
    abbr,
    { abbr, name, genitive, meaning: { en, de } },
  ]),
);

/** The 88 constellations of the International Astronomical Union, by abbreviation. */
export function constellations(): ReadonlyMap<string, ConstellationName> {
  return BY_ABBR;
}
