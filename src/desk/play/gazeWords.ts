/** Words of the eye: they come with its tools. */
import { EN_GAZE } from "../words/en.gaze.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayGaze = sayLater("gaze", EN_GAZE);
