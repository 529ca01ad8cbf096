/** Figures of the printed page as words. */
import type { Gear } from "#core/seams/index.ts";
import { say, written } from "../words/say.ts";
import { sayPrint } from "./words.ts";

/** At most so many decimals, none that say nothing: 5.3, 8, 1.76. */
export const short = (value: number, digits = 1): string => written(Number(value.toFixed(digits)));

/** The nearest of eight points of the compass on the sky, from a position angle. */
export const compassOf = (positionDeg: number): string =>
  sayPrint("compass").split(", ")[Math.round((((positionDeg % 360) + 360) % 360) / 45) % 8]!;

const two = (value: number) => String(value).padStart(2, "0");

/** A place as charts give it: 19h 59.6m +22° 43′. */
export function placeWords(raDeg: number, decDeg: number): string {
  const tenths = Math.round(raDeg * 40) % 14_400;
  const arcmin = Math.round(Math.abs(decDeg) * 60);
  const hours = `${Math.floor(tenths / 600)}h ${two(Math.floor((tenths % 600) / 10))}${say("language.decimal")}${tenths % 10}m`;
  return `${hours} ${decDeg < 0 ? "−" : "+"}${two(Math.floor(arcmin / 60))}° ${two(arcmin % 60)}′`;
}

/** Name with power, where there is one: "Finder 9×". */
export const gearName = ({ kind, magnification }: Gear): string => {
  const name = say(`gear.${kind}`);
  return magnification > 1 ? `${name} ${say("gear.power", { magnification })}` : name;
};

/** All that tells an instrument from another; the eye and the sight need no figures. */
export const gearWords = ({ kind, apertureMm, magnification, fieldDeg }: Gear): string => {
  const name = say(`gear.${kind}`);
  if (magnification <= 1) return name;
  return sayPrint("gear", { name, aperture: apertureMm, power: magnification, field: short(fieldDeg, 2) });
};
