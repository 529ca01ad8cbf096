/** Where the report's words and its sheet lie, CSS px. */
import { REPORT_PAGE } from "./reportPage.ts";

/** `beside`: the sheet stands beside the words; `stacked`: it comes among them. */
export interface ReportLayout {
  readonly kind: "beside" | "stacked";
  readonly leftPx: number;
  readonly wordsPx: number;
  readonly gapPx: number;
  readonly sheetScale: number;
}
const DRAWN = { width: 1440, left: 64, words: 560, gap: 52, top: 44 } as const;
const STACKED_UNDER = 1060;
const STACKED_WORDS = 620;
const LEAST_WORDS = 240;

export function reportLayout(width: number, height: number): ReportLayout {
  if (width < STACKED_UNDER) {
    const leftPx = width < 760 ? 20 : 48;
    const wordsPx = Math.max(LEAST_WORDS, Math.min(STACKED_WORDS, width - 2 * leftPx));
    return { kind: "stacked", leftPx, wordsPx, gapPx: 0, sheetScale: wordsPx / REPORT_PAGE.widthPx };
  }
  const u = Math.min(1.5, width / DRAWN.width);
  const leftPx = DRAWN.left * u;
  const wordsPx = Math.min(660, Math.max(440, DRAWN.words * u));
  const gapPx = DRAWN.gap * u;
  const roomX = width - leftPx - wordsPx - gapPx - leftPx;
  const roomY = height - 2 * DRAWN.top;
  const sheetScale = Math.max(0.5, Math.min(roomX / REPORT_PAGE.widthPx, roomY / REPORT_PAGE.heightPx));
  return { kind: "beside", leftPx, wordsPx, gapPx, sheetScale };
}
