/** The catalogue sky with the stars of the reader's own catalogue. */
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";
import { decodeTile, type OpenSky, openSky } from "../play/skies.ts";
import { currentOf, fileOf, type OwnBase } from "./ownBase.ts";

/**
 * Names, objects, borders and the Milky Way's light are the catalogue sky's; a record of it says "imported", and which
 * import. Null where there is no catalogue of one's own.
 * @param base open as long as the sky is in use
 */
export async function openOwnSky(base: OwnBase): Promise<OpenSky | null> {
  const own = await currentOf(base);
  if (!own) return null;
  const stars = createCatalogueSource({
    fetchFile: (name) => fileOf(base, own.generation, name),
    decode: decodeTile,
  });
  return {
    ...openSky("catalogue"),
    source: { ...stars, ref: { kind: "imported", skyVersion: own.generation } },
    failures: () => stars.failures().map(({ message }) => message),
    retry: () => stars.retryFailed(),
  };
}
