/** `limit`: the faintest star of an instrument under a sky, and what limits it. */
import { skyHere } from "#core/eye/conditions.ts";
import { costsOf } from "#core/eye/costs.ts";
import { isNaked, starLimits } from "#core/eye/instrument.ts";
import { exitPupilMm } from "#core/optics/gear.ts";
import { parseArgs } from "../args.ts";
import type { Verb } from "../io.ts";
import { LIGHT_OPTIONS, lookFrom } from "../lightFrom.ts";
import { pairs } from "../table.ts";
import { rounded } from "../values.ts";

export const limit: Verb = {
  what: "the faintest star that an instrument or the naked eye shows, and what limits it",
  usage:
    "limit --gear=ID|--aperture=MM --magnification=X --field=DEG [--obstruction=MM --transmission=T]|--eye --darkness=MU [--altitude=DEG --extinction=K --age=YEARS|--pupil=MM --observer=novice|typical|keen|F --eyes=1|2 --site=LAT,LON[,HEIGHT_M] --time=UTC]",
  async run(args) {
    const { options } = parseArgs(args, LIGHT_OPTIONS, { least: 0, most: 0, what: "" });
    const { gear, conditions, dir } = lookFrom(options, null);
    const here = skyHere(conditions, dir);
    const { avertedMag, directMag } = starLimits(gear, conditions, here);
    const costs = Object.entries(costsOf(gear, conditions, dir)).map(
      ([cause, mag]) => [cause, rounded(mag, 3)!] as const,
    );
    const json = {
      limitMag: rounded(avertedMag, 3)!,
      directMag: rounded(directMag, 3)!,
      skyMu: rounded(here.skyMu, 3)!,
      exitPupilMm: rounded(isNaked(gear) ? conditions.observer.pupilMm : exitPupilMm(gear), 3)!,
      trueFieldDeg: gear.fieldDeg,
      costsMag: Object.fromEntries(costs),
    };
    return {
      exit: 0,
      json,
      text: pairs([
        ["limit", `${json.limitMag.toFixed(2)} mag, in free gaze`],
        ["stared at", `${json.directMag.toFixed(2)} mag`],
        ["sky", `${json.skyMu.toFixed(2)} mag/arcsec2`],
        ["exit pupil", `${json.exitPupilMm.toFixed(1)} mm`],
        ["true field", `${json.trueFieldDeg} deg`],
        ...costs.map(([cause, mag]) => [`  ${cause}`, `${mag.toFixed(2)} mag lost`] as const),
      ]),
    };
  },
};
