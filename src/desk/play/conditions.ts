/** Time, height and sky in words: as an observer would say them, without distances that could be counted. */
import type { Lesson } from "#core/lesson/types.ts";
import { say } from "../words/say.ts";

const FIST_DEG = 10;

/** Height in fists at arm's length, to the half. */
export function heightWords(altitudeDeg: number): string {
  if (altitudeDeg < 2) return say("hop.atHorizon");
  if (altitudeDeg > 84) return say("hop.overhead");
  const halves = Math.max(1, Math.round((altitudeDeg / FIST_DEG) * 2));
  const whole = Math.floor(halves / 2);
  const half = halves % 2 === 1;
  if (whole === 0) return say("hop.halfFist");
  if (whole === 1 && !half) return say("hop.oneFist");
  return half ? say("hop.fistsAndHalf", { fists: whole }) : say("hop.fists", { fists: whole });
}

const SKIES: readonly (readonly [
  from: number,
  key: "skyMountain" | "skyCountry" | "skyVillage" | "skySuburb" | "skyCity",
])[] = [
  [21.65, "skyMountain"],
  [21.05, "skyCountry"],
  [20.25, "skyVillage"],
  [18.75, "skySuburb"],
  [0, "skyCity"],
];

/** Sky brightness, mag/arcsec², in plain words (common practice, no source). */
export const skyWords = (skyMagPerArcsec2: number): string =>
  say(`hop.${SKIES.find(([from]) => skyMagPerArcsec2 >= from)![1]}`);

/** Local mean time of a place, hours and minutes. */
export function timeWords(utcMs: number, lonDeg: number): string {
  const local = new Date(utcMs + (lonDeg / 15) * 3_600_000);
  return local.toISOString().slice(11, 16);
}

/** The three lines in the corner. */
export const conditionsOf = (
  { place }: Lesson,
  utcMs: number,
  altitudeDeg: number,
): readonly [string, string, string] => [
  say("hop.timeAt", { time: timeWords(utcMs, place.lonDeg), place: place.name }),
  heightWords(altitudeDeg),
  skyWords(place.skyMagPerArcsec2),
];
