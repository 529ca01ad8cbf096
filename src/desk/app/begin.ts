/** What the page needs before its first screen: the store, settings, sound, and which lesson comes first. */

import lessons from "virtual:lessons";
import { effect } from "@preact/signals";
import type { Lesson } from "#core/lesson/types.ts";
import { ownInUse } from "../import/inUse.ts";
import { darkOn } from "../play/darkOn.ts";
import { grainOn } from "../play/grain.ts";
import { twinkleOn } from "../play/twinkle.ts";
import { screenFit } from "../screen/fit.ts";
import { readFit } from "../screen/kept.ts";
import { createSound } from "../sound/createSound.ts";
import { openStore } from "../store/openStore.ts";
import { languageFor, readLanguage, speak } from "../words/language.ts";
import { isSeeded } from "./lessonOf.ts";
import type { FinishedAttempt, Sound, Store } from "./ports.ts";
import { chosenLanguage, freeSky, type LampKind, lamp, lampLevel, screen, screenOf, soundOn, volume } from "./state.ts";

export interface Desk {
  readonly store: Store;
  readonly sound: Sound;
  readonly lessons: readonly Lesson[];
  finished: readonly FinishedAttempt[];
}

const LAMPS: readonly LampKind[] = ["normal", "red", "amber"];
const numberIn = (value: unknown, low: number, high: number, otherwise: number) =>
  typeof value === "number" && value >= low && value <= high ? value : otherwise;

/** Reads the settings, and keeps them from now on. */
async function settings(store: Store): Promise<void> {
  const [kind, level, on, loud, grain, twinkle, dark, own, fit, sky, language] = await Promise.all(
    [
      "lamp",
      "lampLevel",
      "soundOn",
      "volume",
      "grainOn",
      "twinkleOn",
      "darkOn",
      "ownInUse",
      "screenFit",
      "freeSky",
      "language",
    ].map((key) => store.getSetting(key)),
  );
  lamp.value = LAMPS.find((one) => one === kind) ?? "normal";
  lampLevel.value = numberIn(level, 170, 235, 170);
  soundOn.value = on !== false;
  grainOn.value = grain !== false;
  twinkleOn.value = twinkle !== false;
  darkOn.value = dark !== false;
  ownInUse.value = own === true;
  screenFit.value = readFit(fit);
  freeSky.value = String(sky);
  volume.value = numberIn(loud, 0, 1, 0.7);
  chosenLanguage.value = readLanguage(language);
  const speakAsWished = () => speak(languageFor(chosenLanguage.value, navigator.language));
  await speakAsWished();
  effect(() => void speakAsWished());
  let kept: Readonly<Record<string, unknown>> | null = null;
  effect(() => {
    const now = {
      lamp: lamp.value,
      lampLevel: lampLevel.value,
      soundOn: soundOn.value,
      volume: volume.value,
      grainOn: grainOn.value,
      twinkleOn: twinkleOn.value,
      darkOn: darkOn.value,
      ownInUse: ownInUse.value,
      screenFit: screenFit.value,
      freeSky: freeSky.value,
      language: chosenLanguage.value,
    };
    // What has changed alone: whoever closes the page at once waits for nothing else.
    if (kept)
      for (const [key, value] of Object.entries(now)) if (value !== kept[key]) void store.setSetting(key, value);
    kept = now;
  });
}

/** Opens everything and chooses the first screen: a left attempt, the address, or on a first visit the first lesson. */
export async function begin(): Promise<Desk> {
  const store = await openStore();
  const [running, finished] = await Promise.all([store.loadRunning(), store.listFinished(), settings(store)]);
  const sound = createSound({
    on: soundOn.value,
    volume: volume.value,
    folder: new URL("sounds", document.baseURI).href,
  });
  effect(() => sound.setOn(soundOn.value));
  effect(() => sound.setVolume(volume.value));
  const isThere = (lessonId: string) => isSeeded(lessonId) || lessons.some(({ id }) => id === lessonId);
  const known = running && isThere(running.lessonId) ? running : null;
  const first = lessons[0];
  if (location.hash !== "") screen.value = screenOf(location.hash);
  else if (known) screen.value = { kind: "play", lessonId: known.lessonId };
  else if (finished.length === 0 && first) screen.value = { kind: "play", lessonId: first.id };
  return { store, sound, lessons, finished };
}
