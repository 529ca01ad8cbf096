/** The instrument of a call: by its id, or in the open. */

import { nearestWord } from "#core/lesson/nearestWord.ts";
import { GEAR } from "#core/optics/gear.ts";
import type { Gear, LightPath } from "#core/seams/index.ts";
import { UsageError } from "./usageError.ts";
import { needed, numberOf } from "./values.ts";

export const GEAR_OPTIONS = {
  gear: "value",
  aperture: "value",
  magnification: "value",
  field: "value",
  image: "value",
  obstruction: "value",
  transmission: "value",
} as const;
type GearOptions = { readonly [K in keyof typeof GEAR_OPTIONS]?: string };

export type Image = "correct" | "inverted" | "mirrored";
const IMAGES: readonly Image[] = ["correct", "inverted", "mirrored"];
/** A straight tube, a straight tube without erecting prism, one mirror: the plain cases of each image. */
const PATH_OF: Readonly<Record<Image, LightPath>> = {
  correct: "direct",
  inverted: "halfTurn",
  mirrored: "mirrorDiagonal",
};

export function imageOf(text: string | undefined): Image | undefined {
  if (text === undefined || IMAGES.includes(text as Image)) return text as Image | undefined;
  throw new UsageError("ARGUMENTS", `--image ${text} is unknown`, `give ${IMAGES.join(", ")}`);
}

function byId(id: string): Gear {
  const gear = GEAR.get(id);
  if (gear) return gear;
  const near = nearestWord(id, GEAR.keys());
  throw new UsageError(
    "ARGUMENTS",
    `no instrument ${id}`,
    near ? `did you mean ${near}?` : `known: ${[...GEAR.keys()].join(", ")}`,
  );
}

/** The instrument that --gear names, or that --aperture, --magnification, --field and the rest describe. */
export function gearFrom(options: GearOptions): Gear {
  const inTheOpen = (["aperture", "magnification", "field", "obstruction", "transmission"] as const).filter(
    (name) => options[name] !== undefined,
  );
  if (options.gear !== undefined) {
    if (inTheOpen.length > 0)
      throw new UsageError("ARGUMENTS", `--gear and --${inTheOpen[0]} are given`, "name an instrument or describe one");
    return byId(options.gear);
  }
  const number = (
    name: "aperture" | "magnification" | "field" | "obstruction" | "transmission",
    usual: string | undefined,
    example: string,
    low: number,
    high: number,
    unit: string,
  ) => numberOf(name, needed(name, options[name] ?? usual, example), low, high, unit);
  if (inTheOpen.length === 0)
    throw new UsageError(
      "ARGUMENTS",
      "the instrument is missing",
      "add --gear=finder-9x50, or --aperture=50 --magnification=9 --field=5.3",
    );
  const apertureMm = number("aperture", undefined, "50", 1, 1000, "millimetres");
  return {
    id: "described",
    kind: "eyepiece",
    apertureMm,
    magnification: number("magnification", undefined, "9", 1, 600, "times"),
    fieldDeg: number("field", undefined, "5.3", 0.05, 120, "degrees"),
    path: PATH_OF[imageOf(options.image) ?? "correct"],
    clockDeg: 0,
    obstructionMm: number("obstruction", "0", "0", 0, apertureMm / 2, "millimetres"),
    transmission: number("transmission", "0.9", "0.9", 0.1, 1, "whole light"),
    eyes: 1,
  };
}
