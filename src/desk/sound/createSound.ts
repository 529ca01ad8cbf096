/**
 * Sounds through howler, behind the page's port. The library and the files come with the first gesture: nothing of them
 * stands before the first sky. howler's own suspending is off, since it does not always wake: the page wakes it.
 */
import type { Howl } from "howler";
import type { Sound, SoundName } from "../app/ports.ts";

const FILES: Readonly<Record<SoundName | "night" | "mount", { loop: boolean }>> = {
  waymark: { loop: false },
  change: { loop: false },
  sheet: { loop: false },
  flip: { loop: false },
  pencil: { loop: false },
  tick: { loop: false },
  right: { loop: false },
  night: { loop: true },
  mount: { loop: true },
};
/** The rub is gone so soon after the tube stands. */
const RUB_FADE_MS = 120;
const NIGHT_FADE_MS = 1500;

type Library = typeof import("howler");

export interface SoundHow {
  readonly on: boolean;
  readonly volume: number;
  /** Folder of the sound files, as the page sees it. */
  readonly folder: string;
}

/** Creates the port; until the first gesture every call only remembers what is wished. */
export function createSound({ on: firstOn, volume: firstVolume, folder }: SoundHow): Sound {
  let library: Library | null = null;
  let on = firstOn;
  let volume = firstVolume;
  let night = false;
  let rubbing = false;
  const howls = new Map<string, Howl>();

  const howl = (name: keyof typeof FILES): Howl | null => {
    if (!library) return null;
    let one = howls.get(name);
    if (!one) {
      one = new library.Howl({
        src: [`${folder}/${name}.wav`],
        loop: FILES[name].loop,
        volume: FILES[name].loop ? 0 : 1,
      });
      howls.set(name, one);
    }
    return one;
  };

  const applyNight = () => {
    const wind = howl("night");
    if (!wind) return;
    if (night && on && !wind.playing()) wind.play();
    wind.fade(wind.volume(), night && on ? 1 : 0, NIGHT_FADE_MS);
    if (!night || !on) setTimeout(() => !(night && on) && wind.pause(), NIGHT_FADE_MS);
  };

  const apply = () => {
    if (!library) return;
    library.Howler.mute(!on);
    library.Howler.volume(volume);
    applyNight();
  };

  const wake = () => {
    const context = library?.Howler.ctx;
    if (context && context.state !== "running" && on) void context.resume();
  };

  const load = async () => {
    library ??= await import("howler");
    library.Howler.autoSuspend = false;
    apply();
    wake();
  };

  const onGesture = () => {
    if (!library) void load();
    else wake();
  };
  for (const kind of ["pointerdown", "keydown"]) addEventListener(kind, onGesture, { passive: true });
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) library?.Howler.mute(true);
    else apply();
    wake();
  });

  return {
    play(name) {
      if (on) howl(name)?.play();
    },
    moving(fieldsPerS) {
      const moves = fieldsPerS > 0.01 && on;
      const rub = howl("mount");
      if (!rub || (!moves && !rubbing)) return;
      if (moves) {
        if (!rub.playing()) rub.play();
        rub.rate(0.7 + Math.min(1, fieldsPerS) * 0.6);
        rub.volume(Math.min(1, 0.3 + fieldsPerS));
      } else rub.fade(rub.volume(), 0, RUB_FADE_MS);
      rubbing = moves;
    },
    setOn(value) {
      on = value;
      apply();
      wake();
    },
    setVolume(value) {
      volume = value;
      apply();
    },
    setNight(value) {
      night = value;
      applyNight();
    },
  };
}
