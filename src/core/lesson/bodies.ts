/** The comets and minor planets that a lesson brings along, as objects of its sky on its night. */
import { julianDate } from "#core/celestial/time.ts";
import type { SkyObject } from "#core/seams/index.ts";
import { bodyObject, type OrbitBody } from "#core/sky/orbits/bodyObject.ts";
import type { OrbitBrightness } from "#core/sky/orbits/magnitude.ts";
import { type OrbitElements, perihelionJdOf } from "#core/sky/orbits/twoBody.ts";
import type { Lesson, LessonBody } from "./types.ts";

/** Where an author knows no slope: the usual ones of comets' brightness and of the H, G system (common practice, no source). */
const USUAL_SLOPE = { comet: 10, minorPlanet: 0.15 } as const;

export type LessonNight = Pick<Lesson, "place" | "time" | "bodies">;

/** Julian date of an instant as elements have it: TT, read off as it is written. */
const jdOf = (instant: string) => julianDate(Date.parse(instant));

function orbitOf(body: LessonBody): OrbitElements {
  const { eccentricity, inclinationDeg, nodeDeg, argumentDeg, perihelion } = body;
  const perihelionAu = body.perihelionAu ?? (body.semiMajorAu ?? 1) * (1 - eccentricity);
  const form = { perihelionAu, eccentricity };
  const perihelionJd =
    perihelion === undefined ? perihelionJdOf(form, jdOf(body.epoch), body.meanAnomalyDeg ?? 0) : jdOf(perihelion);
  return { ...form, perihelionJd, inclinationDeg, nodeDeg, argumentDeg };
}

function brightnessOf({ kind, totalMag = 0, absoluteMag = 0, slope = USUAL_SLOPE[kind] }: LessonBody): OrbitBrightness {
  return kind === "comet" ? { kind, totalMag, slope } : { kind, absoluteMag, slope };
}

const orbitBody = (body: LessonBody, i: number): OrbitBody => ({
  id: `body-${i + 1}`,
  name: body.name,
  orbit: orbitOf(body),
  brightness: brightnessOf(body),
  comaArcmin: body.comaArcmin,
});

/** The bodies of a checked lesson, in its order, where they stand at its time for its place. Pure. */
export const bodiesOf = ({ bodies, place, time }: LessonNight): SkyObject[] =>
  bodies.map((body, i) => bodyObject(orbitBody(body, i), place, Date.parse(time)));
