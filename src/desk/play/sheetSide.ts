/** On which side of the turned sheet its words and tools find the table free. */

/** The paper as it lies: its middle on the window, its size, and how far it is turned, clockwise. */
export interface Lying {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly turnRad: number;
}
interface Size {
  readonly width: number;
  readonly height: number;
}
/** Words over tools; where their edge may lie at the left and at the right, and how low. */
export interface SideRoom {
  readonly words: Size;
  readonly tools: Size;
  readonly left: { readonly x: number; readonly bottom: number };
  readonly right: { readonly x: number; readonly bottom: number };
  /** Width of the words in two lines. */
  readonly narrowPx: number;
}
export interface Side {
  readonly atLeft: boolean;
  readonly narrow: boolean;
}

/** Air between paper and words, px. */
const AIR_PX = 6;
const SAMPLES = { across: 12, down: 4 } as const;

/** How many of the places of a box lie on the paper. */
function hits(paper: Lying, left: number, top: number, { width, height }: Size): number {
  const [c, s] = [Math.cos(paper.turnRad), Math.sin(paper.turnRad)];
  let count = 0;
  for (let i = 0; i <= SAMPLES.across; i++)
    for (let k = 0; k <= SAMPLES.down; k++) {
      const x = left + (width * i) / SAMPLES.across - paper.x;
      const y = top + (height * k) / SAMPLES.down - paper.y;
      const onPaper =
        Math.abs(c * x + s * y) < paper.width / 2 + AIR_PX && Math.abs(c * y - s * x) < paper.height / 2 + AIR_PX;
      if (onPaper) count += 1;
    }
  return count;
}

function hitsAt(paper: Lying, { words, tools, ...room }: SideRoom, { atLeft, narrow }: Side): number {
  const { x, bottom } = atLeft ? room.left : room.right;
  const isTwoLines = narrow && words.width > room.narrowPx;
  const laid = isTwoLines ? { width: room.narrowPx, height: 2 * words.height } : words;
  const leftOf = ({ width }: Size) => (atLeft ? x : x - width);
  const toolsTop = bottom - tools.height;
  return hits(paper, leftOf(tools), toolsTop, tools) + hits(paper, leftOf(laid), toolsTop - laid.height, laid);
}

/**
 * The first free place of: the side that the paper turns away from, the other one, and either with the words in two lines;
 * where none is free, the one that covers least of the paper.
 */
export function freeSide(paper: Lying, room: SideRoom): Side {
  const away = Math.sin(paper.turnRad) > 0.14;
  const sides = [false, true].flatMap((narrow) => [away, !away].map((atLeft): Side => ({ atLeft, narrow })));
  const counts = sides.map((side) => hitsAt(paper, room, side));
  return sides[counts.indexOf(Math.min(...counts))]!;
}
