/** `name`: what bears a name. */
import { formatDec, formatRa } from "#core/celestial/angles.ts";
import { BODY_NAMES } from "#core/celestial/bodies.ts";
import { DEG, radecFromDir } from "#core/celestial/vector.ts";
import { findByName } from "#core/sky/names/findByName.ts";
import { plainName } from "#core/sky/names/letters.ts";
import { movingBodies } from "#core/sky/solar/movingBodies.ts";
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { underSky } from "../lessonFile.ts";
import { table } from "../table.ts";
import { rounded, roundedTurn, utcMsOf } from "../values.ts";

const OPTIONS = { sky: "value", lesson: "value", time: "value" } as const;

/** Sun, Moon and planets are found only where the instant is told. */
function nothing(query: string, isReal: boolean): string {
  return isReal && BODY_NAMES.some((body) => body === plainName(query))
    ? `${query} moves among the stars: add --time=2027-08-31T21:00:00Z.`
    : `Nothing bears the name "${query}".`;
}

export const name: Verb = {
  what: "stars, objects, constellations and planets by name",
  usage: "name QUERY [--sky=catalogue|OWN|SEED|--lesson=FILE] [--time=UTC]",
  async run(args, io) {
    const { options: given, words } = parseArgs(args, OPTIONS, { least: 1, most: 8, what: "the name" });
    const { sky, options } = await underSky(given, io);
    const query = words.join(" ");
    const bodies = options.time === undefined || !sky.isReal ? [] : movingBodies(utcMsOf(options.time));
    const found = findByName(query, sky.names(), sky.objects(), bodies);
    const matches = found.map(({ name: best, kind, dir, magV, otherNames }) => {
      const { raRad, decRad } = radecFromDir(dir);
      return {
        name: best,
        kind,
        raDeg: roundedTurn(raRad / DEG, 6),
        decDeg: rounded(decRad / DEG, 6)!,
        magV,
        otherNames,
        constellation: sky.constellationAt(dir),
      };
    });
    return {
      exit: matches.length > 0 ? 0 : 1,
      json: { matches },
      text:
        matches.length === 0
          ? nothing(query, sky.isReal)
          : table(
              ["name", "kind", "right ascension", "declination", "V", "constellation", "other names"],
              matches.map((each) => [
                each.name,
                each.kind,
                formatRa(each.raDeg),
                formatDec(each.decDeg),
                each.magV?.toFixed(2) ?? "",
                each.constellation,
                each.otherNames.join(", "),
              ]),
            ),
    };
  },
};
