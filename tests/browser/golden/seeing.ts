/** What the eye's model says over a grid of gear, skies, instants and altitudes: whole thousandths of a magnitude. */
import { DEG, offsetDir } from "#core/celestial/vector.ts";
import { type Conditions, conditionsAt, zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { GEAR } from "#core/optics/gear.ts";
import type { Dir } from "#core/seams/index.ts";
import { catalogueGlowBeyond } from "#core/sky/glow/catalogueGlow.ts";
import { catalogueObjects } from "#core/sky/objects.ts";

const SITE = { latDeg: 50, lonDeg: 10, heightM: 400 };
const SKIES = [17, 19.5, 21.7];
/** Dusk, a night without Moon, and one near full Moon. */
const INSTANTS = ["2027-08-31T18:40:00Z", "2027-08-31T22:00:00Z", "2027-09-15T22:00:00Z"];
const ZENITH_DISTANCES_DEG = [0, 30, 60, 75, 85, 89.5];
const COLOURS_BV = [-0.2, 0.7, 1.8];
const MARGIN_GEAR = ["eye", "finder-9x50", "newton150-30x", "newton300-150x"];
const EVERY_OBJECT = 10;
const EVERY_POWER = 20;

const ABOUT: Dir = [1, 0, 0];
const skiesOf = (mu: number): Conditions[] => [
  zenithConditions(mu),
  ...INSTANTS.map((utc) => ({ ...conditionsAt(mu, SITE, Date.parse(utc)), glowMuAt: catalogueGlowBeyond() })),
];

/** Limits to free gaze and to a stare, by gear, colour and zenith distance. */
export function limitGrid(): number[] {
  const found: number[] = [];
  for (const conditions of SKIES.flatMap(skiesOf)) {
    const seeing = eyeSeeing(conditions, []);
    for (const id of GEAR.keys())
      ZENITH_DISTANCES_DEG.forEach((deg, i) => {
        const dir = offsetDir(conditions.zenith ?? ABOUT, 1.1 * i, deg * DEG);
        const { avertedMilliMag, directMilliMag } = seeing.star(dir, COLOURS_BV[i % COLOURS_BV.length]!, id);
        found.push(avertedMilliMag, directMilliMag);
      });
  }
  return found;
}

/** Margins of objects of every kind, and for some the power that shows them best. */
export function marginGrid(): number[] {
  const objects = catalogueObjects().filter((_, i) => i % EVERY_OBJECT === 0);
  const found: number[] = [];
  for (const conditions of SKIES.flatMap((mu) => skiesOf(mu).slice(0, 2))) {
    const seeing = eyeSeeing(conditions, objects);
    for (const id of MARGIN_GEAR)
      objects.forEach((object, i) => {
        const seen = seeing.object(object.id, id);
        found.push(seen.marginMilliMag);
        if (i % EVERY_POWER === 0) found.push(seen.bestMagnification);
      });
  }
  return found;
}
