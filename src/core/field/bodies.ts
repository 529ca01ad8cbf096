/** Moon and planets in a view: those that an instrument shows as discs, and those that look like stars. */
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import type { Dir, Gear, StarBlock } from "#core/seams/index.ts";
import type { SolarBody, SolarSystem } from "#core/sky/solar/solarSystem.ts";
import type { BodyForm, BodyLook } from "./objectLook.ts";
import { pointBlock } from "./pointBlock.ts";

/** A body large enough in the instrument to be seen as a disc. */
export interface BodyDisc {
  readonly name: SolarBody["name"];
  readonly dir: Dir;
  readonly diameterRad: number;
  /** Position angle of the picture's long axis, north through east, radians: the lit limb's middle, or the pole where there are belts. */
  readonly axisRad: number;
  readonly look: BodyLook;
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
/** Outer edge of Saturn's ring A in equatorial radii (136,775 km; from memory). */
const RING_RADII = 2.27;
const FORM: Readonly<Partial<Record<SolarBody["name"], BodyForm>>> = {
  moon: "moon",
  jupiter: "banded",
  saturn: "ringed",
};

/** What an instrument makes of the bodies. The Sun is never among them: no instrument here shows it. */
export function bodiesInView({ bodies, moons }: SolarSystem, gear: Gear): BodiesInView {
  const leastRad = gear.fieldDeg * DEG * DISC_SHARE;
  const widthRad = ({ name, diameterMas }: SolarBody) =>
    diameterMas * MAS_RAD * (FORM[name] === "ringed" ? RING_RADII : 1);
  const isDisc = (body: SolarBody) => body.name === "moon" || widthRad(body) >= leastRad;
  const seen = bodies.filter(({ name }) => name !== "sun");
  const points = [
    ...seen.filter((body) => !isDisc(body)).map((body) => ({ ...body, colourBV: COLOUR_BV[body.name] ?? MOON_BV })),
    ...moons.map((moon) => ({ ...moon, colourBV: MOON_BV })),
  ];
  return {
    points: pointBlock(points.map((point) => ({ ...point, dir: dirFromMas(point) }))),
    discs: seen.filter(isDisc).map(discOf),
  };
}

function discOf(body: SolarBody): BodyDisc {
  const { name, diameterMas, litPermille, brightLimbDeg, poleDeg, tiltPermille } = body;
  const form = FORM[name] ?? "globe";
  // From so far inside, outer planets look all but full: their belts matter, not their limb.
  const axisDeg = form === "banded" || form === "ringed" ? poleDeg : brightLimbDeg;
  return {
    name,
    dir: dirFromMas(body),
    diameterRad: diameterMas * MAS_RAD,
    axisRad: axisDeg * DEG,
    look: {
      form,
      litShare: litPermille / 1000,
      poleRad: (poleDeg - axisDeg) * DEG,
      tilt: tiltPermille / 1000,
      colourBV: COLOUR_BV[name] ?? MOON_BV,
    },
  };
}
