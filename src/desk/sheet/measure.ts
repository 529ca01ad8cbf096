/** Widths of type, asked of the browser and kept. */
import type { Measure } from "#core/chart/labels.ts";
import type { TextStyle } from "#core/chart/types.ts";
import type { SheetLook } from "./look.ts";

/** Each style as a canvas font at its own size; style, weight, px, which family, tracking in em. */
const FONT: Readonly<Record<TextStyle, readonly [css: string, family: "words" | "figures", trackingPx: number]>> = {
  starName: ["italic 500 15px", "words", 0],
  greek: ["italic 500 16px", "words", 0],
  number: ["600 12.5px", "figures", 0],
  figureName: ["500 13px", "words", 0.34 * 13],
  gridFigure: ["500 11.5px", "figures", 0],
  word: ["600 14px", "figures", 0],
  note: ["italic 500 15px", "words", 0],
};
let ctx: CanvasRenderingContext2D | null = null;
const known = new Map<string, number>();

/** Forgets all widths: call it when fonts have come in. */
export function forgetWidths(): void {
  known.clear();
}

/** A measure of the sheet's letters in the page's fonts. */
export function measureIn({ words, figures }: Pick<SheetLook, "words" | "figures">): Measure {
  return (style, text) => {
    const key = `${style}\n${text}`;
    const width = known.get(key);
    if (width !== undefined) return width;
    ctx ??= document.createElement("canvas").getContext("2d")!;
    const [css, family, tracking] = FONT[style];
    ctx.font = `${css} ${family === "words" ? words : figures}`;
    const measured = ctx.measureText(text).width + tracking * text.length;
    known.set(key, measured);
    return measured;
  };
}
