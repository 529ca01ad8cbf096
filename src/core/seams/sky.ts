/**
 * The seams of the sky: directions, tiles and where stars come from.
 * Every number that enters a record or a decision is an integer; its name ends in the unit:
 * mas = milliarcseconds, das = tenths of an arcsecond, milliMag = 0.001 mag, ms = milliseconds.
 */

/** Unit vector, ICRS (J2000): +x March equinox, +z north pole. */
export type Dir = readonly [x: number, y: number, z: number];
/** Row-major 3x3 rotation, nine numbers: `out = m · v`. */
export type Mat3 = ArrayLike<number>;
/** A compiled direction: right ascension [0, 1 296 000 000) and declination, ICRS, mas. */
export type MasDir = { readonly raMas: number; readonly decMas: number };
export type SkyRef = {
  readonly kind: "catalogue" | "practice" | "imported";
  readonly seed?: string | undefined;
  readonly skyVersion: number;
};
/** HEALPix nested pixel of an order, and the magnitude layer. A tile that would pass 65,536 stars splits one order deeper. */
export type TileKey = { readonly order: number; readonly pixel: number; readonly layer: number };
/**
 * (nuniq(order, pixel) * 64 + layer) * 65536 + rank within the tile; valid within one SkyRef.
 * Outside the program a star is HIP, TYC, or seed and designation.
 */
export type StarId = number & { readonly __star: unique symbol };
export type Cone = { readonly centre: Dir; readonly radiusRad: number };
/** Planar block of one tile, brightest first: three floats a direction (ICRS), V in 0.001 mag, colour B-V in mag. */
export interface StarBlock {
  readonly key: TileKey;
  readonly count: number;
  readonly dirs: Float32Array;
  readonly milliMag: Int16Array;
  readonly colourBV: Float32Array;
  /** True where the generator filled what a catalogue lacks: never a waymark, an answer or a mark on a chart. */
  readonly invented: boolean;
  /** True of bodies that move among the stars: they come anew as they move, and no star's light is added to theirs. */
  readonly moves?: true;
}
/** `version` changes when `blocks` would; a caller may keep what it built until then. */
export interface Resident {
  readonly blocks: readonly StarBlock[];
  readonly missing: readonly TileKey[];
  readonly complete: boolean;
  readonly version: number;
}
export interface StarSource {
  readonly ref: SkyRef;
  /**
   * What is here now: every block that may hold a star of the cone down to the limit (blocks overhang the cone: the
   * caller cuts). Synchronous, pure, allocates nothing that grows with the sky.
   */
  resident(cone: Cone, limitMag: number): Resident;
  /** Brings tiles in; at most four under way, cancelled by the signal. Rejects with a DataFileError where a tile is missing or damaged. */
  want(tiles: readonly TileKey[], priority: number, signal: AbortSignal): Promise<void>;
}

/** Kinds of object in the trade's words. A kind is never coded by colour. */
export type ObjectKind =
  | "openCluster"
  | "globularCluster"
  | "planetaryNebula"
  | "emissionNebula"
  | "reflectionNebula"
  | "supernovaRemnant"
  | "darkNebula"
  | "galaxy"
  | "doubleStar"
  | "asterism"
  | "comet"
  | "minorPlanet";
/**
 * How the light lies over an object: evenly; falling off from the middle as a disc does, or as an old round galaxy does; as a
 * globular cluster does; as the head of a comet does; in a ring; or in stars of its own.
 */
export type ObjectProfile = "uniform" | "exponential" | "bulge" | "plummer" | "coma" | "ring" | "members";
/** A pair as measured: position angle of the fainter from the brighter, north through east, equinox J2000. */
export interface DoubleMeasure {
  readonly separationArcsec: number;
  readonly positionAngleDeg: number;
  /** Brighter first. */
  readonly magV: readonly [number, number];
  /** Year of the measure. */
  readonly epochYear: number;
}
/** One thing that is no single star. Places ICRS; sizes are full axes. */
export interface SkyObject {
  readonly id: string;
  readonly names: readonly string[];
  readonly kind: ObjectKind;
  readonly dir: Dir;
  /** Of the whole; 99 where it gives no light of its own (dark nebulae). */
  readonly magV: number;
  readonly majorArcmin: number;
  readonly minorArcmin: number;
  /** Position angle of the major axis, north through east, degrees; of a comet, away from the Sun. */
  readonly axisDeg: number;
  readonly profile: ObjectProfile;
  /** Abbreviation: of the International Astronomical Union, or of the practice sky. */
  readonly constellation: string;
  /** One line of our own on how it looks. */
  readonly looks: string;
  /** Where it is a double star. */
  readonly double?: DoubleMeasure | undefined;
}
