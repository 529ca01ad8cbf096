import { EN_SCREEN } from "../words/en.screen.ts";
import { sayLater } from "../words/sayLater.ts";

export const say = sayLater("screen", EN_SCREEN);
