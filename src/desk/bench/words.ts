/** Words of the bench: they come with it. */
import { EN_BENCH } from "../words/en.bench.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayBench = sayLater("bench", EN_BENCH);
