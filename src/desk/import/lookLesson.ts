/** A look round among one's own stars, as a lesson of one place with nothing to be sought: the night that shows the place well. */
import { moonDir, sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir, horizonFromIcrs } from "#core/celestial/frames.ts";
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import { SALLOWFELL_HILL } from "#core/lesson/sallowfellHill.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";
import type { OpenSky } from "../play/skies.ts";
import { say } from "./words.ts";

/** One place for either half of the sky. */
const NORTH = SALLOWFELL_HILL;
const SOUTH = { name: "Lantern Flat", latDeg: -33, lonDeg: 0, heightM: 600, skyMagPerArcsec2: 21.5 } as const;
const DAY_MS = 86_400_000;
const YEAR_DAYS = 365.25;
/** At midnight of this day right ascension 12h stands due south (textbook). */
const MARCH_MS = Date.UTC(2027, 2, 21);
/** Before it is highest, so that it is never overhead, where a tube has no room. */
const EARLIER_MS = 1.5 * 3_600_000;
const DARK_SUN_RAD = -12 * DEG;
const MOST_DAYS = 16;
const PLACE_ID = "look-place";

/** A place to look round from. */
export interface LookPlace {
  readonly name: string;
  readonly dir: Dir;
}

/** The site and instant of next year's nights at which a place stands high in a dark sky, without a Moon where there is such a night. */
export function nightFor(dir: Dir): Pick<Lesson, "place" | "time"> {
  const { raRad, decRad } = radecFromDir(dir);
  const decDeg = decRad / DEG;
  const place = Math.abs(NORTH.latDeg - decDeg) <= Math.abs(SOUTH.latDeg - decDeg) ? NORTH : SOUTH;
  const turns = (raRad / DEG / 360 + 0.5) % 1;
  const best = MARCH_MS + Math.round(turns * YEAR_DAYS) * DAY_MS - EARLIER_MS;
  const isGood = (utcMs: number) => {
    const horizon = horizonFromIcrs(place, utcMs);
    const height = (of: Dir) => altAzFromDir(horizon, of).altRad;
    return height(sunDir(utcMs)) < DARK_SUN_RAD && height(moonDir(place, utcMs)) < 0;
  };
  const days = Array.from({ length: 2 * MOST_DAYS + 1 }, (_, i) => (i % 2 === 1 ? (i + 1) / 2 : -i / 2));
  const utcMs = days.map((day) => best + day * DAY_MS).find(isGood) ?? best;
  return { place, time: new Date(utcMs).toISOString().replace(".000", "") };
}

/** Stands for what a hop seeks: nothing that any instrument shows. */
const nothingAt = ({ name, dir }: LookPlace): SkyObject => ({
  id: PLACE_ID,
  names: [name],
  kind: "asterism",
  dir,
  magV: 99,
  majorArcmin: 1,
  minorArcmin: 1,
  axisDeg: 0,
  profile: "members",
  constellation: "",
  looks: "",
});

/** The sky that such a lesson is looked at in. */
export const skyOfLook = (sky: OpenSky, at: LookPlace): OpenSky => ({
  ...sky,
  objects: [...sky.objects, nothingAt(at)],
});

export function lookLesson(at: LookPlace): Lesson {
  const { raRad, decRad } = radecFromDir(at.dir);
  const spot = { name: at.name, raDeg: raRad / DEG, decDeg: decRad / DEG };
  return {
    format: 1,
    id: "look",
    title: say("lookTitle"),
    part: 1,
    number: 1,
    of: 1,
    minutes: 5,
    skills: ["scale"],
    sky: "catalogue",
    bodies: [],
    ...nightFor(at.dir),
    level: "P",
    gear: {
      mount: "altazimuth",
      stance: "upright",
      use: ["eye", "sight", "finder-9x50", "newton200-48x"],
      hopping: "finder-9x50",
      claim: "newton200-48x",
      finderOffDeg: [0, 0],
    },
    aids: {
      ring: "off",
      compass: "free",
      limits: "off",
      asInInstrument: "free",
      carry: "free",
      trail: "off",
      hints: "off",
    },
    weights: { directness: 50, pins: 30, care: 20 },
    drift: false,
    briefing: [say("lookBriefing", { name: at.name }), say("lookNothing")],
    stages: [
      {
        hop: {
          anchor: spot,
          target: PLACE_ID,
          ways: [{ name: at.name, marks: [spot, PLACE_ID] }],
          steps: [{ when: "start", now: say("lookNow"), say: say("lookSay", { name: at.name }) }],
          hints: [],
          after: { found: "", wrong: "", shown: "", notSeen: "", missed: "", outside: "", codes: {} },
        },
      },
    ],
    pass: { claims: [3, 2, 1] },
    afterwards: [],
  };
}
