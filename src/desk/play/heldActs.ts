/** Keys that do something for as long as they are down. */
import type { KeyAct } from "../keys.ts";

export type HeldAct = Extract<KeyAct, "avert" | "stare">;
export const isHeld = (act: KeyAct): act is HeldAct => act === "avert" || act === "stare";

/** @param tell an act begins or ends; each only once, however often its key repeats */
export function createHeldActs(tell: (act: HeldAct, on: boolean) => void) {
  const down = new Map<string, HeldAct>();
  const lift = (key: string) => {
    const name = key.toLowerCase();
    const act = down.get(name);
    if (!act) return;
    down.delete(name);
    tell(act, false);
  };
  return {
    press(key: string, act: HeldAct) {
      const name = key.toLowerCase();
      if (down.has(name)) return;
      down.set(name, act);
      tell(act, true);
    },
    /** Shift may have come or gone since. */
    lift,
    release() {
      for (const key of [...down.keys()]) lift(key);
    },
  };
}
