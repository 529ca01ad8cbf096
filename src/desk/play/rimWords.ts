/** What the rim says: in nouns, units in their own case. */
import type { Gear } from "#core/seams/index.ts";
import { say, written } from "../words/say.ts";

/** Spaces between the rim's words: wide ones. */
const GAP = "\u2003";
const figure = (value: number) => written(Math.round(value * 10) / 10);

/** Instrument, aperture, magnification and true field; fewer of them where there is little room. */
export function instrumentLine(gear: Gear, short: boolean): string {
  const name = say(`gear.${gear.kind}`).toUpperCase();
  const power = say("gear.power", { magnification: figure(gear.magnification) });
  if (gear.kind === "eye")
    return [name, say("gear.window", { fieldDeg: figure(gear.fieldDeg) }).toUpperCase()].join(GAP);
  if (gear.kind === "sight") return [name, ...(short ? [] : [power]), say("gear.rings").toUpperCase()].join(GAP);
  if (short) return [name, power, say("play.degrees", { fieldDeg: figure(gear.fieldDeg) })].join(GAP);
  return [
    name,
    say("gear.aperture", { apertureMm: gear.apertureMm }),
    power,
    say("gear.trueField", { fieldDeg: figure(gear.fieldDeg) }).toUpperCase(),
  ].join(GAP);
}

const SHORT_IMAGE = {
  direct: "play.correct",
  halfTurn: "play.turned",
  mirrorDiagonal: "play.mirrored",
  erectingDiagonal: "play.correct",
  newtonian: "play.turned",
} as const;

/** The kind of image. */
export const imageLine = (gear: Gear, short: boolean): string =>
  (short ? say(SHORT_IMAGE[gear.path]) : say(`gear.${gear.path}`)).toUpperCase();

/** Name of an instrument in capitals, as ladder and rows have it. */
export const gearName = (gear: Gear): string => say(`gear.${gear.kind}`);
export const fieldFigure = figure;
