/** Words of the start page: they come with it. */
import { EN_START } from "../words/en.start.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayStart = sayLater("start", EN_START);
