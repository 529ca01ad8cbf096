/** What a sky calls its stars and how it joins them to figures; the catalogue sky and every practice sky give the same shapes. */
import type { Dir } from "#core/seams/index.ts";

export interface NamedStar {
  readonly dir: Dir;
  /** Hipparcos number; absent in a practice sky. */
  readonly hip?: number;
  readonly magV: number;
  /** B-V, mag, where the sky knows it. */
  readonly colourBV?: number;
  /** Short, for a chart: Greek letter with its number raised, Latin letter, or Flamsteed number. */
  readonly label: string;
  /** The name of its own, where it has one. */
  readonly proper?: string;
  /** The number that Flamsteed's list gives it within the constellation. */
  readonly flamsteed?: number;
  /** Abbreviation of the constellation of the designation; a few stars lie beyond its border (2 UMi in Cepheus, 10 UMa in Lynx). */
  readonly con?: string;
}
/** One straight line of a stick figure, star to star. */
export interface FigureSegment {
  readonly from: Dir;
  readonly to: Dir;
  /** Abbreviation of the figure that the line belongs to. */
  readonly figure: string;
}
export interface Figure {
  readonly abbr: string;
  readonly name: string;
  /** Where a chart writes the name: mean direction of the figure's stars. */
  readonly centre: Dir;
  /** One line told about it, where the sky is an invented one. */
  readonly lore?: string;
}
export interface SkyNames {
  /** Brightest first. */
  readonly stars: readonly NamedStar[];
  readonly segments: readonly FigureSegment[];
  readonly figures: readonly Figure[];
}
