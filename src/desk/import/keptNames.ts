/** The named stars of the catalogue that was taken in; none where there is none, or it has no names. */
import { NAMES_FILE, readOwnNames } from "#core/sky/import/ownNames.ts";
import type { NamedStar } from "#core/sky/names/types.ts";
import { currentOf, fileOf, openOwnBase } from "./ownBase.ts";

/** Rejects where the browser keeps nothing, InputError where what was kept has been changed. */
export async function keptNames(): Promise<readonly NamedStar[]> {
  const base = await openOwnBase();
  try {
    const own = await currentOf(base);
    // What was taken in before names were kept has no count of them.
    return own?.names?.kept ? readOwnNames(await fileOf(base, own.generation, NAMES_FILE)) : [];
  } finally {
    base.close();
  }
}
