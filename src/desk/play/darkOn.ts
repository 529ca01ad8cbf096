/** White light costs the eye the dark, unless the reader does not want it. */
import { signal } from "@preact/signals";

/** The reader wants it. */
export const darkOn = signal(true);
