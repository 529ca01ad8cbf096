/** What the reader has told of their screen, and what follows for the picture. */
import { computed, signal } from "@preact/signals";
import { lightOfValue, type ScreenReach, screenReach } from "../../stage/screenLight.ts";
import { lamp, lampLevel } from "../app/state.ts";
import { NOT_FITTED, type ScreenFit } from "./kept.ts";

/** A projector's black is grey: what shows on a wall in a dim room (our own choice, told from no source). */
export const PROJECTOR: ScreenFit = {
  leastLuminance: lightOfValue(100 / 255),
  cardPx: null,
  distance: "hall",
  projector: true,
};
const PROJECTOR_STARS = 1.5;
export const screenFit = signal(NOT_FITTED);

/** Display value of the greatest channel under the lamp in use, 0 .. 1. */
export const greatestNow = (): number => (lamp.value === "normal" ? 1 : lampLevel.value / 255);

const ALL_SHOWS: ScreenReach = { lift: 1, hiddenMag: 0, least: 0 };
/** What the screen shows under the lamp in use. */
export const screenReachNow = computed((): ScreenReach => {
  const { leastLuminance } = screenFit.value;
  if (leastLuminance === null) return ALL_SHOWS;
  return screenReach(leastLuminance, lamp.value, greatestNow());
});
export const starScaleNow = (): number => (screenFit.value.projector ? PROJECTOR_STARS : 1);
