/** Whether hops in the catalogue sky take their stars from the reader's own catalogue. */
import { signal } from "@preact/signals";

export const ownInUse = signal(false);
