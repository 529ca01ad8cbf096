/** A comet or minor planet as an object of the sky: where it stands, how bright and how large it is at an instant. */
import { sunDir } from "#core/celestial/bodies.ts";
import type { Site } from "#core/celestial/frames.ts";
import { DEG, dirFromMas, masFromDir, positionAngleRad } from "#core/celestial/vector.ts";
import type { SkyObject } from "#core/seams/index.ts";
import { magnitudeOf, type OrbitBrightness } from "./magnitude.ts";
import { type OrbitElements, orbitPlace } from "./twoBody.ts";

export interface OrbitBody {
  readonly id: string;
  readonly name: string;
  readonly orbit: OrbitElements;
  readonly brightness: OrbitBrightness;
  /** Diameter of a comet's coma as it is seen; without it the usual one at its distance. */
  readonly comaArcmin?: number | undefined;
}

/** Of a comet's coma, as it is seen in small telescopes: 200,000 km across (from memory). */
const COMA_AU = 200_000 / 149_597_870.7;
const COMA_ARCMIN = { least: 0.5, most: 60 } as const;
/** A point has no size; this one is below what any eye tells. */
const POINT_ARCMIN = 0.05;
/** What tiles of stars can hold. */
const MAG = { brightest: -10, faintest: 30 } as const;
/** Places are rounded to this before anything rests on them: engines differ far below. */
const GRAIN_MAS = 100;

const LOOKS = {
  comet: "A soft round glow, brightest in its middle.",
  minorPlanet: "A point like any star: the one that no page has.",
} as const;

const grained = (mas: number) => Math.round(mas / GRAIN_MAS) * GRAIN_MAS;
const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));

/**
 * A body as an observer has it at an instant: its place with light time and parallax, V to 0.01, its size to 0.1', and for
 * a comet the way that its tail points, to a degree. Nothing else of it moves: a hop is short.
 */
export function bodyObject(body: OrbitBody, site: Site, utcMs: number): SkyObject {
  const { kind } = body.brightness;
  const place = orbitPlace(body.orbit, utcMs, site);
  const { raMas, decMas } = masFromDir(place.dir);
  const dir = dirFromMas({ raMas: grained(raMas), decMas: grained(decMas) });
  const magV = within(magnitudeOf(body.brightness, place), MAG.brightest, MAG.faintest);
  const usual = Math.atan(COMA_AU / place.earthAu) / (DEG / 60);
  const coma = body.comaArcmin ?? within(Math.round(10 * usual) / 10, COMA_ARCMIN.least, COMA_ARCMIN.most);
  const sizeArcmin = kind === "comet" ? coma : POINT_ARCMIN;
  return {
    id: body.id,
    names: [body.name],
    kind,
    dir,
    magV: Math.round(100 * magV) / 100,
    majorArcmin: sizeArcmin,
    minorArcmin: sizeArcmin,
    axisDeg: kind === "comet" ? (Math.round(positionAngleRad(dir, sunDir(utcMs)) / DEG) + 180) % 360 : 0,
    profile: kind === "comet" ? "coma" : "members",
    constellation: "",
    looks: LOOKS[kind],
  };
}
