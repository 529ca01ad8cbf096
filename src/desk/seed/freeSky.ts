/** The sky that the reader practises under, by a name of core/lesson/siteSkies.ts; any other is taken for the usual one. */
import { signal } from "@preact/signals";

export const freeSky = signal("");
