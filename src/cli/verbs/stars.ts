/** `stars`: every star of a circle, exactly. */
import { formatDec, formatRa } from "#core/celestial/angles.ts";
import { DEG } from "#core/celestial/vector.ts";
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { openSky, starsIn } from "../skies.ts";
import { starJson } from "../starJson.ts";
import { table } from "../table.ts";
import { angleDegOf, needed, numberOf, placeFrom } from "../values.ts";

const OPTIONS = { ra: "value", dec: "value", radius: "value", limit: "value", sky: "value" } as const;

export const stars: Verb = {
  what: "the stars of a circle, brightest first",
  usage: "stars --ra=RA --dec=DEC --radius=DEG --limit=MAG [--sky=catalogue|OWN|SEED]",
  async run(args, io) {
    const { options } = parseArgs(args, OPTIONS, { least: 0, most: 0, what: "" });
    const centre = placeFrom(options.ra, options.dec);
    const radiusDeg = angleDegOf("radius", needed("radius", options.radius, "5"), 0, 180);
    const limitMag = numberOf("limit", needed("limit", options.limit, "9.5"), -2, 20, "magnitudes");
    const sky = openSky(options.sky, io);
    const { complete, stars: found } = await starsIn(sky, centre.dir, radiusDeg * DEG, limitMag);
    const rows = found.map(starJson);
    return {
      exit: 0,
      json: { sky: sky.word, epoch: sky.epoch, complete, stars: rows },
      text: table(
        ["right ascension", "declination", "V", "B-V", ""],
        rows.map((star) => [
          formatRa(star.raDeg),
          formatDec(star.decDeg),
          star.magV.toFixed(2),
          star.colourBV?.toFixed(2) ?? "",
          star.invented ? "invented" : "",
        ]),
      ),
    };
  },
};
