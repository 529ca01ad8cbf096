/**
 * The eye in play, whose code comes after the sky: it heeds what hand, keys and lamp ask of it, puts that into the record with
 * its time, and tells the picture where it looks, how used to the dark it is, and what of a telescope's vanes it sees. It moves
 * nothing and costs nothing.
 */
import { effect, untracked } from "@preact/signals";
import { gearInUse, stepEvent } from "#core/session/session.ts";
import { lamp, reducedMotion } from "../app/state.ts";
import { say } from "../words/say.ts";
import type { Clock } from "./clock.ts";
import { createDark } from "./dark.ts";
import { darkOn } from "./darkOn.ts";
import { createGaze, foveaCssPx, stareLossMag } from "./gaze.ts";
import type { Eye, Hop } from "./hop.ts";
import { createSpikes } from "./spikes.ts";

/** A look at something by a torch: it goes out by itself, so that nobody is left in the light. */
const TORCH_MS = 1500;

/** Calls whenever something begins or ends; the result stops it. */
function onTurns(isOn: () => boolean, act: (on: boolean) => void): () => void {
  let was = false;
  return effect(() => {
    const on = isOn();
    if (on === was) return;
    was = on;
    untracked(() => act(on));
  });
}

/** An eye for a hop: adapted, and looking about. */
export function createEye(hop: Hop, clock: Clock): Eye {
  const { signals, attempt, picture, field, keeper } = hop;
  const { session } = attempt;
  const gaze = createGaze();
  const spikes = createSpikes();
  const dark = createDark(() => attempt.night.zenithMu);
  let torch: ReturnType<typeof setTimeout> | undefined;

  /** What begins while a hop is played can end after it: a key may be lifted when the claim is made. */
  const put = (kind: "stare" | "avert" | "torch", on: boolean) => {
    clock.upTo(performance.now());
    if (signals.phase.value === "play") {
      stepEvent(session, { kind, on });
      keeper.changed();
    }
    clock.invalidate();
  };
  const light = (on: boolean) => {
    put("torch", on);
    dark.light(on, performance.now());
    // A question stands until it is answered.
    if (on && !signals.asksPin.value) signals.notice.value = say("play.tookDark");
  };
  const torchOut = () => {
    clearTimeout(torch);
    signals.torch.value = false;
  };
  const stops = [
    onTurns(
      () => signals.stare.value !== null,
      (on) => {
        gaze.stareAt(signals.stare.value);
        put("stare", on);
      },
    ),
    onTurns(
      () => signals.beside.value,
      (on) => {
        gaze.lookBeside(on);
        put("avert", on);
      },
    ),
    onTurns(
      () => signals.torch.value,
      (on) => {
        light(on);
        if (on) torch = setTimeout(torchOut, TORCH_MS);
      },
    ),
    onTurns(
      () => lamp.value !== "normal",
      (isDim) => {
        if (isDim || !darkOn.value || signals.phase.value !== "play") return;
        light(true);
        light(false);
      },
    ),
  ];
  return {
    lackMag: (nowMs) => dark.lackMag(nowMs),
    look(nowMs, fieldRadiusCssPx) {
      const lackMag = dark.lackMag(nowMs);
      // In steps that the rim shows: panels are not drawn anew for each frame.
      signals.lackMag.value = Math.round(10 * lackMag) / 10;
      const lossMag = stareLossMag(field.limitMilliMag, field.directMilliMag, lackMag);
      const foveaPx = foveaCssPx(gearInUse(session), fieldRadiusCssPx);
      picture.gaze = gaze.now(nowMs, foveaPx, lossMag, lackMag, reducedMotion.value);
      picture.spikes = spikes.now(session, attempt);
    },
    get moves() {
      return gaze.moves || dark.moves;
    },
    stop() {
      signals.stare.value = null;
      signals.beside.value = false;
      torchOut();
      signals.lackMag.value = 0;
      for (const stop of stops) stop();
    },
  };
}
