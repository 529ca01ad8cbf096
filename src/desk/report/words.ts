import { EN_REPORT } from "../words/en.report.ts";
import { sayLater } from "../words/sayLater.ts";

export const sayReport = sayLater("report", EN_REPORT);
