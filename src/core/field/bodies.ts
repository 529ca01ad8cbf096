/** Moon and planets in a view: those that an instrument shows as discs, and those that look like stars. */
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import type { Dir, Gear, StarBlock } from "#core/seams/index.ts";
import type { SolarBody, SolarSystem } from "#core/sky/solar/solarSystem.ts";
import { pointBlock } from "./pointBlock.ts";

/** A body large enough in the instrument to be seen as a disc. */
export interface BodyDisc {
  readonly name: SolarBody["name"];
  readonly dir: Dir;
  readonly diameterRad: number;
  /** Lit share of the disc, 0 to 1. */
  readonly litShare: number;
  /** Position angle of the middle of the bright limb, north through east, radians. */
  readonly limbRad: number;
}
export interface BodiesInView {
  /** Planets that are points, and Jupiter's moons: drawn as the stars that they seem. */
  readonly points: StarBlock;
  readonly discs: readonly BodyDisc[];
}

/** A disc is one from this share of the field on: 21" in an eyepiece of 0.7 degrees (fitted to the picture's grain). */
const DISC_SHARE = 1 / 120;
const MAS_RAD = DEG / 3_600_000;
/** B-V of the whole disc (Mallama et al. 2017, Icarus 282, 19; from memory), and of Jupiter's moons, from memory. */
const COLOUR_BV: Readonly<Record<string, number>> = {
  mercury: 0.97,
  venus: 0.8,
  mars: 1.43,
  jupiter: 0.87,
  saturn: 1.01,
  uranus: 0.51,
  neptune: 0.39,
};
const MOON_BV = 0.95;

/** What an instrument makes of the bodies. The Sun is never among them: no instrument here shows it. */
export function bodiesInView({ bodies, moons }: SolarSystem, gear: Gear): BodiesInView {
  const leastRad = gear.fieldDeg * DEG * DISC_SHARE;
  const isDisc = ({ name, diameterMas }: SolarBody) => name === "moon" || diameterMas * MAS_RAD >= leastRad;
  const seen = bodies.filter(({ name }) => name !== "sun");
  const points = [
    ...seen.filter((body) => !isDisc(body)).map((body) => ({ ...body, colourBV: COLOUR_BV[body.name] ?? MOON_BV })),
    ...moons.map((moon) => ({ ...moon, colourBV: MOON_BV })),
  ];
  return {
    points: pointBlock(points.map((point) => ({ ...point, dir: dirFromMas(point) }))),
    discs: seen.filter(isDisc).map((body) => ({
      name: body.name,
      dir: dirFromMas(body),
      diameterRad: body.diameterMas * MAS_RAD,
      litShare: body.litPermille / 1000,
      limbRad: body.brightLimbDeg * DEG,
    })),
  };
}
