/** Sizes of the printed page. Charts are laid out in their own px, which are so many millimetres on the paper. */
export const MM_PER_PX = 0.231;
/** A4 within its margins. */
export const PAPER = { widthMm: 210, heightMm: 297, marginMm: 15, leftMm: 67, rightMm: 106, gapMm: 7 } as const;

export const pxOf = (mm: number): number => mm / MM_PER_PX;
