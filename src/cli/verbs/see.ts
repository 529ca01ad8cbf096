/** `see`: whether an instrument shows a thing, how plainly, and with which power best. */

import { DEG, separationRad } from "#core/celestial/vector.ts";
import { seeingArcsec } from "#core/eye/air.ts";
import { type SkyHere, skyHere } from "#core/eye/conditions.ts";
import { splitIn } from "#core/eye/doubles.ts";
import { isNaked } from "#core/eye/instrument.ts";
import { bandOf, bestPower, howSeen, NO_MARGIN_MAG, objectMargin, type Seen } from "#core/eye/margin.ts";
import { nearestWord } from "#core/lesson/nearestWord.ts";
import type { Dir, DoubleMeasure, SkyObject } from "#core/seams/index.ts";
import { findByName, type MovingBody } from "#core/sky/names/findByName.ts";
import { OBJECT_KINDS, objectOfRow } from "#core/sky/objects.ts";
import { movingBodiesFrom } from "#core/sky/solar/movingBodies.ts";
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { underSky } from "../lessonFile.ts";
import { LIGHT_OPTIONS, type LightOptions, type Look, lookFrom } from "../lightFrom.ts";
import type { Sky } from "../skies.ts";
import { pairs } from "../table.ts";
import { UsageError } from "../usageError.ts";
import { needed, numberOf, rounded, siteOf, utcMsOf } from "../values.ts";

const OPTIONS = {
  ...LIGHT_OPTIONS,
  magnitude: "value",
  size: "value",
  kind: "value",
  sky: "value",
  lesson: "value",
} as const;
type Described = { readonly magnitude?: string; readonly size?: string; readonly kind?: string };
type Target = { readonly seen: Seen; readonly dir: Dir | null; readonly double?: DoubleMeasure | undefined };

/** A single star, as the model takes it: a point. */
const pointOf = (magV: number): Seen => ({
  kind: "doubleStar",
  magV,
  majorArcmin: 0,
  minorArcmin: 0,
  profile: "members",
});

/** A pair and its brighter star are listed so near each other at most. */
const SAME_STAR_RAD = (20 * DEG) / 3600;

const slip = (message: string, hint: string) => new UsageError("ARGUMENTS", message, hint);

/** Sun, Moon and planets where they stand: in the real sky on a night that is told. */
function bodiesOf({ isReal }: Sky, { site, time }: Pick<LightOptions, "site" | "time">): MovingBody[] {
  return isReal && site !== undefined && time !== undefined ? movingBodiesFrom(siteOf(site), utcMsOf(time)) : [];
}

function named(query: string, sky: Sky, options: LightOptions): Target {
  const all = sky.objects();
  const [best] = findByName(query, sky.names(), all, bodiesOf(sky, options));
  if (best?.kind === "body" && best.name === "Sun")
    throw new UsageError("NAME", "the Sun is no target", "never point an instrument at it or near it");
  if (!best) throw new UsageError("NAME", `nothing bears the name "${query}"`, "try faintward name, or describe it");
  const { dir } = best;
  const object = all.find((each) => each.dir[0] === dir[0] && each.dir[1] === dir[1] && each.dir[2] === dir[2]);
  const double = object ? object.double : doubleAt(all, dir);
  if (object) return { seen: object, dir, double };
  if (best.magV === null || best.magV === undefined)
    throw new UsageError("NAME", `${best.name} is neither star nor object`, "name what can be looked at");
  return { seen: pointOf(best.magV), dir, double };
}

/** The pair that a star of the catalogue is. */
const doubleAt = (objects: readonly SkyObject[], dir: Dir): DoubleMeasure | undefined =>
  objects.find((each) => each.double && separationRad(each.dir, dir) < SAME_STAR_RAD)?.double;

/** Whether the pair is seen as two, by what it would need. */
function partedAs(double: DoubleMeasure, { gear, conditions }: Look, { airMass }: SkyHere) {
  const split = splitIn(gear, double, seeingArcsec(conditions.seeingArcsec, airMass));
  return { ...split, neededArcsec: rounded(split.neededArcsec, 2)!, separationArcsec: double.separationArcsec };
}
const LIMIT_WORDS = { aperture: "the aperture", eye: "the power", air: "the air" } as const;
const splitRows = (split: ReturnType<typeof partedAs> | undefined): [string, string][] =>
  split
    ? [
        ["pair", `${split.separationArcsec}", ${split.isSplit ? "two stars" : "one star"}`],
        ["asks for", `${split.neededArcsec}" by ${LIMIT_WORDS[split.limit]}`],
      ]
    : [];

/** `A[xB]`, arcmin. */
function sizeOf(text: string): readonly [major: number, minor: number] {
  const parts = text.split(/x/i);
  if (parts.length > 2 || parts.includes(""))
    throw slip(`--size ${text} cannot be used`, "give A or AxB in arcmin, such as 11x7");
  const [a, b] = parts.map((part) => numberOf("size", part, 0.05, 1200, "arcmin"));
  return [Math.max(a!, b ?? a!), Math.min(a!, b ?? a!)];
}

function described({ magnitude, size, kind }: Described): Target {
  const magV = numberOf("magnitude", needed("magnitude", magnitude, "8.4"), -2, 16, "magnitudes");
  const [majorArcmin, minorArcmin] = sizeOf(needed("size", size, "11x7"));
  const word = needed("kind", kind, "galaxy");
  if (!OBJECT_KINDS.some((each) => each === word)) {
    const near = nearestWord(word, OBJECT_KINDS);
    throw slip(`--kind ${word} is unknown`, near ? `did you mean ${near}?` : `known: ${OBJECT_KINDS.join(", ")}`);
  }
  if (word === "darkNebula") throw slip("a dark nebula has no magnitude", "describe something that shines");
  const row = { raDeg: 0, decDeg: 0, axisDeg: 0, constellation: "none", looks: "as described" };
  const seen = objectOfRow({
    ...row,
    id: "described",
    names: ["described"],
    kind: word,
    magV,
    majorArcmin,
    minorArcmin,
  });
  return { seen, dir: null };
}

function targetOf(words: readonly string[], options: Described & LightOptions, sky: Sky): Target {
  const query = words.join(" ");
  if (query === "") return described(options);
  const own = (["magnitude", "size", "kind"] as const).find((name) => options[name] !== undefined);
  if (own) throw slip(`a name and --${own} are given`, "name a thing or describe one");
  return named(query, sky, options);
}

/** A night at a site has its Milky Way; a bare darkness is that of the very place. */
async function underItsSky(look: Look, sky: Sky): Promise<Look> {
  if (!look.conditions.moon) return look;
  return { ...look, conditions: { ...look.conditions, glowMuAt: await sky.glow() } };
}

export const see: Verb = {
  what: "whether an instrument or the naked eye shows a thing, and how plainly",
  usage:
    "see NAME|--magnitude=MAG --size=A[xB] --kind=KIND --gear=ID|--aperture=MM --magnification=X --field=DEG|--eye --darkness=MU [as limit] [--sky=catalogue|OWN|SEED|--lesson=FILE]",
  async run(args, io) {
    const { options: given, words } = parseArgs(args, OPTIONS, { least: 0, most: 8, what: "" });
    const { sky, options } = await underSky(given, io);
    const { seen, dir, double } = targetOf(words, options, sky);
    const look = await underItsSky(lookFrom(options, dir), sky);
    const here = skyHere(look.conditions, look.dir);
    const isUp = here.altitudeDeg >= 0;
    const marginMag = isUp ? rounded(objectMargin(seen, look.gear, look.conditions, here), 3)! : NO_MARGIN_MAG;
    const best = bestPower(seen, look.gear, look.conditions, here);
    const json = {
      visible: marginMag >= 0,
      marginMag,
      band: bandOf(Math.round(marginMag * 1000), seen.kind),
      how: howSeen(marginMag),
      bestMagnification: isNaked(look.gear) ? 1 : rounded(best.magnification, 0)!,
      skyMu: rounded(here.skyMu, 3)!,
      ...(double && { split: partedAs(double, look, here) }),
    };
    const BANDS = { seen: "seen", edge: "at the edge", not: "not seen" } as const;
    return {
      exit: json.visible ? 0 : 1,
      json,
      text: pairs([
        ["seen", isUp ? BANDS[json.band] : "no, it is below the horizon"],
        ["margin", `${marginMag.toFixed(2)} mag`],
        ["how", json.how],
        ["best power", `${json.bestMagnification}x`],
        ["sky", `${json.skyMu.toFixed(2)} mag/arcsec2`],
        ...splitRows(json.split),
      ]),
    };
  },
};
