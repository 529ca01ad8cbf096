import type { Lesson } from "#core/lesson/types.ts";
import { translation } from "../words/say.ts";
import { isTry } from "./state.ts";

/** The language of a lesson's own words where that is not the page's: lessons that come with it are in English. */
export const langOf = ({ id }: Pick<Lesson, "id">): "en" | undefined =>
  translation.value && /^\d/.test(id) && !isTry() ? "en" : undefined;
