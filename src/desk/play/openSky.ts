/** A sky as the page uses it: where its stars come from, their names, its objects. */
import type { NamedPlace } from "#core/lesson/skyLookup.ts";
import type { Cone, SkyObject, StarSource } from "#core/seams/index.ts";
import type { BorderLine } from "#core/sky/boundaries/borderLines.ts";
import type { GlowMuAt } from "#core/sky/glow/glowMap.ts";
import type { SkyNames } from "#core/sky/names/types.ts";

export interface OpenSky {
  readonly source: StarSource;
  readonly names: SkyNames;
  readonly objects: readonly SkyObject[];
  /** Named places that are neither star nor object. */
  readonly places: readonly NamedPlace[];
  /** Borders of its constellations about a circle, to be printed; none where they cannot be had. */
  bordersWithin(cone: Cone): Promise<readonly BorderLine[]>;
  /** What its Milky Way adds to a night; undefined where its map cannot be had. */
  glow(): Promise<GlowMuAt | undefined>;
  /** Files that did not come, as sentences; empty where all is well. */
  failures(): readonly string[];
  retry(): void;
}
