import { EN_PRINT } from "../words/en.print.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayPrint = sayLater(EN_PRINT);
