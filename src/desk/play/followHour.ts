import type { Hop } from "./hop.ts";

/** Lets what is seen, said and scored follow the hour that was set last. The code for it comes when it is first asked for. */
export function followHour(hop: Hop): void {
  const before = hop.hourStands;
  hop.hourStands = Promise.all([import("./hours.ts"), before])
    .then(([{ moveHop }]) => moveHop(hop))
    .catch(() => false);
}
