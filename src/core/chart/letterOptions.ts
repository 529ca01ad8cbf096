/** What laying letters needs to know of the screen. */
import type { Box, Measure } from "./labels.ts";
import type { PagePoint } from "./page.ts";

export type LetterOptions = {
  readonly measure: Measure;
  /** Size of the sheet on the screen by the size of the page. */
  readonly pxPerPagePx: number;
  readonly typeScale: number;
  /** The part of the paper that is light enough to read by: px from the sheet's middle; null for all of it. */
  readonly lit: { readonly x: number; readonly y: number; readonly radiusPx: number } | null;
  /** The part of the paper that is in view, px from the sheet's middle, where it is not all of it. */
  readonly shown?: Box | undefined;
  /** A line of the hand, px on the page: names give way to it, words cross it where they must. */
  readonly trail?: readonly PagePoint[] | undefined;
};
