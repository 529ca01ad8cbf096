import { EN_PRINT } from "../words/en.print.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayPrint = sayLater("print", EN_PRINT);
