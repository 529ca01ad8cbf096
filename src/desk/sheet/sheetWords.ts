/** The sheet in words: how it lies, and what is printed where. */
import type { SheetThing } from "#core/chart/describe.ts";
import type { SheetView } from "#core/chart/sheetView.ts";
import type { Sign } from "#core/chart/types.ts";
import { fixed } from "../words/say.ts";
import { saySheet } from "./words.ts";

const tenth = (value: number) => fixed(Math.round(value * 10) / 10, 1);

/** "From behind, turned 21° to the left". */
export function viewWords({ flipped, turnRad, scale }: SheetView): string {
  const side = saySheet(flipped ? "behind" : "front");
  const deg = Math.round((turnRad * 180) / Math.PI);
  const turn = deg - 360 * Math.round(deg / 360);
  const size = Math.abs(turn);
  const lies =
    size === 0
      ? saySheet("straight", { side })
      : size === 180
        ? saySheet("turnedHalf", { side })
        : saySheet(turn > 0 ? "turnedRight" : "turnedLeft", { side, deg: size });
  return scale > 1.05 ? saySheet("nearer", { lies, times: tenth(scale) }) : lies;
}

export const signWords = (sign: Sign): string =>
  sign === "anchor" || sign === "target" ? saySheet(`${sign}Sign`) : saySheet(`${sign}`);

/** What a thing on the sheet is called. */
export function thingName({ what, name, sign, magV }: SheetThing): string {
  if (what === "anchor") return saySheet("anchor");
  if (what === "target") return saySheet("target");
  if (what === "object") return name || signWords(sign!);
  const figures = { magV: tenth(magV ?? 0) };
  return name ? saySheet("star", { ...figures, name }) : saySheet("unnamed", figures);
}

/** A thing with its way and distance; the anchor itself stands alone. */
export function thingWords(thing: SheetThing): string {
  const name = thingName(thing);
  return thing.fields < 0.005 ? name : saySheet("at", { thing: name, fields: tenth(thing.fields), hour: thing.hour });
}

/** Where a cross stands: by the nearest thing that has a name. */
export function crossWords(things: readonly SheetThing[]): string {
  const nearest = things.find(({ what, name }) => what !== "star" || name) ?? things[0];
  if (!nearest) return "";
  // The list gives the way from the cross to the thing; the cross is the other way.
  const hour = ((nearest.hour + 5) % 12) + 1;
  return saySheet("crossAt", { fields: tenth(nearest.fields), name: thingName(nearest), hour });
}

export const rulerWords = ({ deg, fields }: { readonly deg: number; readonly fields: number }): string =>
  saySheet("reads", { deg: tenth(deg), fields: tenth(fields) });
