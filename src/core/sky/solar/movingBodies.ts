/** Sun, Moon and planets as things that can be found by name. */
import { Body, Illumination } from "astronomy-engine";
import { BODY_NAMES, bodyDir } from "#core/celestial/bodies.ts";
import type { Site } from "#core/celestial/frames.ts";
import { astroTime } from "#core/celestial/time.ts";
import { dirFromMas } from "#core/celestial/vector.ts";
import type { MovingBody } from "../names/findByName.ts";
import { solarSystemAt } from "./solarSystem.ts";

const WORDS = {
  sun: ["Sun", Body.Sun],
  moon: ["Moon", Body.Moon],
  mercury: ["Mercury", Body.Mercury],
  venus: ["Venus", Body.Venus],
  mars: ["Mars", Body.Mars],
  jupiter: ["Jupiter", Body.Jupiter],
  saturn: ["Saturn", Body.Saturn],
  uranus: ["Uranus", Body.Uranus],
  neptune: ["Neptune", Body.Neptune],
} as const;

/** Where they stand at an instant from the Earth's middle (the Moon is up to a degree off for a site), with V to 0.1. */
export function movingBodies(utcMs: number): MovingBody[] {
  return BODY_NAMES.map((body) => {
    const [name, engine] = WORDS[body];
    const magV = Math.round(10 * Illumination(engine, astroTime(utcMs)).mag) / 10;
    return { name, dir: bodyDir(body, utcMs), magV };
  });
}

/** Where they stand at an instant for a site, with V to 0.1. */
export const movingBodiesFrom = (site: Site, utcMs: number): MovingBody[] =>
  solarSystemAt(site, utcMs).bodies.map((body) => ({
    name: WORDS[body.name][0],
    dir: dirFromMas(body),
    magV: Math.round(body.milliMag / 100) / 10,
  }));
