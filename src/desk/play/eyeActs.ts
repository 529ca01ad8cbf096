/** What hand and keys ask of the eye: told to its signals, which it heeds once it is there. */
import type { PlayModel } from "./model.ts";
import type { PlaySignals } from "./signals.ts";

export type EyeActs = Pick<PlayModel, "stareAt" | "lookBeside" | "shineTorch">;

/** Each begins only while a hop is played, and ends at any time. */
export function createEyeActs({ phase, stare, beside, torch }: PlaySignals): EyeActs {
  const isPlayed = () => phase.value === "play";
  return {
    stareAt(place) {
      if (place === null || isPlayed()) stare.value = place;
    },
    lookBeside(on) {
      if (!on || isPlayed()) beside.value = on;
    },
    shineTorch() {
      if (isPlayed()) torch.value = true;
    },
  };
}
