/** Words of the table of keys: they come with it. */
import { EN_KEYS } from "../words/en.keys.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayKeys = sayLater("keys", EN_KEYS);
