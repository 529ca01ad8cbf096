/** How things look and what they are called, in the language that is spoken: the tables say it in English. */
import type { SkyObject } from "#core/seams/index.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import { translation } from "./say.ts";

type Table = Readonly<Record<string, string>>;
let german: Readonly<Record<"byId" | "bySentence" | "names", Table>> | null = null;

/** To be awaited before the others are asked; where German does not come, English stays. */
export async function looksReady(): Promise<void> {
  if (translation.value)
    german ??= await import("#shared/looks.de.json").then(
      (file) => file.default,
      () => null,
    );
}
const spoken = () => (translation.value ? german : null);

/** The line on an object's looks. */
export const looksOf = ({ id, looks }: Pick<SkyObject, "id" | "looks">): string =>
  spoken()?.bySentence[looks] ?? spoken()?.byId[id] ?? looks;

/** The object with the names that it has in the language besides. */
export function withSpokenNames(object: SkyObject): SkyObject {
  const table = spoken()?.names;
  const more = table ? object.names.flatMap((name) => table[name] ?? []) : [];
  return more.length === 0 ? object : { ...object, names: [...object.names, ...more] };
}

/** The body by its name in the language. */
export const bySpokenName = (body: MovingBody): MovingBody => ({
  ...body,
  name: spoken()?.names[body.name] ?? body.name,
});
