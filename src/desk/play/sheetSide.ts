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
  /** Width of the words in two lines and in three. */
  readonly narrowPx: readonly [two: number, three: number];
}
export interface Side {
  readonly atLeft: boolean;
  /** Lines of the words. */
  readonly lines: 1 | 2 | 3;
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

/** The words as they stand in so many lines; short ones do not need them. */
function laidIn(lines: Side["lines"], words: Size, [two, three]: SideRoom["narrowPx"]): Size {
  if (lines === 1 || words.width <= two) return words;
  return lines === 2 ? { width: two, height: 2 * words.height } : { width: three, height: 3 * words.height };
}

function hitsAt(paper: Lying, { words, tools, ...room }: SideRoom, { atLeft, lines }: Side): number {
  const { x, bottom } = atLeft ? room.left : room.right;
  const laid = laidIn(lines, words, room.narrowPx);
  const leftOf = ({ width }: Size) => (atLeft ? x : x - width);
  const toolsTop = bottom - tools.height;
  return hits(paper, leftOf(tools), toolsTop, tools) + hits(paper, leftOf(laid), toolsTop - laid.height, laid);
}

/**
 * The first free place of: the side that the paper turns away from, the other one, and either with the words in two lines
 * or in three; where none is free, the one that covers least of the paper.
 */
export function freeSide(paper: Lying, room: SideRoom): Side {
  const away = Math.sin(paper.turnRad) > 0.14;
  const sides = ([1, 2, 3] as const).flatMap((lines) => [away, !away].map((atLeft): Side => ({ atLeft, lines })));
  const counts = sides.map((side) => hitsAt(paper, room, side));
  return sides[counts.indexOf(Math.min(...counts))]!;
}
