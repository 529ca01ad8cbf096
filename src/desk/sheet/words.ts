/** Words of the sheet: they come with it. */
import { EN_SHEET } from "../words/en.sheet.ts";
import { sayLater } from "../words/sayLater.ts";

export const saySheet = sayLater("sheet", EN_SHEET);
