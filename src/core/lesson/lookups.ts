/** What a lesson asks of a sky. The page, the command line and the build give it the real tables; tests give small ones. */
import type { Dir, Seeing, SkyObject, SkyRef } from "#core/seams/index.ts";
import type { Lesson } from "./types.ts";

/** A thing of the sky that has a name. */
export interface FoundSpot {
  readonly name: string;
  readonly dir: Dir;
  /** V; undefined for a place given by its coordinates. */
  readonly magV: number | undefined;
  /** B-V; 0.7 where nothing is known. */
  readonly colourBV: number;
  /** Where it is an object and no star. */
  readonly object?: SkyObject | undefined;
}

export interface SkyLookup {
  readonly ref: SkyRef;
  /** The star or object that bears the name, in any of its spellings; undefined where none does. */
  find(name: string): FoundSpot | undefined;
  /** Every name, for "did you mean". */
  names(): Iterable<string>;
  readonly objects: readonly SkyObject[];
}

/** What of a lesson makes its sky: the sky's name, and the bodies that it brings along, on its night. */
export type SkyOfLesson = Pick<Lesson, "sky" | "place" | "time" | "bodies">;

export interface Lookups {
  sky(lesson: SkyOfLesson): SkyLookup;
  /** What the instruments show under the lesson's sky. */
  seeing(lesson: Lesson): Seeing;
}
