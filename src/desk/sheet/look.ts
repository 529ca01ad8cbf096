/** The light on the paper, as the style sheet has it: read once, and again when the lamp changes. */

export interface Pool {
  readonly radiusPx: number;
  /** Colours by share of the radius. */
  readonly stops: readonly { readonly at: number; readonly colour: string }[];
}
export interface SheetLook {
  readonly ink: string;
  readonly paper: string;
  readonly grain: number;
  readonly pool: Pool;
  readonly poolLow: Pool;
  readonly words: string;
  readonly figures: string;
  /** The lamp is a dim one: its pool is narrow and follows pointer and focus. */
  readonly dim: boolean;
}

/** Reads `radial-gradient(circle 430px at ..., #8f897e, #888277 50%, ...)`; stops without a share lie evenly between. */
export function parsePool(css: string): Pool {
  const radiusPx = Number(/circle\s+([\d.]+)px/.exec(css)?.[1] ?? 430);
  const raw = [...css.matchAll(/(#[0-9a-f]{3,8})(?:\s+([\d.]+)%)?/gi)].map(([, colour, share]) => ({
    colour: colour!,
    at: share === undefined ? null : Number(share) / 100,
  }));
  const last = raw.length - 1;
  const stops = raw.map(({ colour, at }, i) => ({ colour, at: at ?? (i === last ? 1 : i / Math.max(1, last)) }));
  return { radiusPx, stops };
}

const hexPair = (hex: string, i: number) =>
  hex.length < 6 ? Number.parseInt(hex[i]! + hex[i]!, 16) : Number.parseInt(hex.slice(2 * i, 2 * i + 2), 16);

/** Red, green and blue of a hex colour, 0 .. 255. */
export function channelsOf(colour: string): readonly [r: number, g: number, b: number] {
  const hex = colour.slice(1);
  return [hexPair(hex, 0), hexPair(hex, 1), hexPair(hex, 2)];
}

/** The pool's colour at a share of its radius, as the red channel: the light by which contrast is told. */
function redAt({ stops }: Pool, share: number): number {
  const next = stops.findIndex(({ at }) => at >= share);
  const [a, b] = next < 0 ? [stops.at(-1)!, stops.at(-1)!] : [stops[Math.max(0, next - 1)]!, stops[next]!];
  const t = b.at > a.at ? (share - a.at) / (b.at - a.at) : 0;
  const [from, to] = [channelsOf(a.colour)[0], channelsOf(b.colour)[0]];
  return from + (to - from) * Math.min(1, Math.max(0, t));
}

/** Share of the radius within which the paper is light enough for print to be read (4.5:1 against the ink). */
export function readableShare(pool: Pool, dim: boolean): number {
  const least = dim ? 0x7a : 0x7c;
  for (let share = 1; share > 0; share -= 0.01) if (redAt(pool, share) >= least - 0.5) return share;
  return 0;
}

/** What black over the full pool makes the low one: alpha by share of the radius. */
export function dimming(full: Pool, low: Pool): readonly { readonly at: number; readonly alpha: number }[] {
  return [0, 0.2, 0.4, 0.55, 0.7, 0.85, 1].map((at) => {
    const lit = redAt(full, (at * low.radiusPx) / full.radiusPx);
    return { at, alpha: Math.round(Math.max(0, 1 - redAt(low, at) / Math.max(1, lit)) * 1000) / 1000 };
  });
}

const plain = (value: string, otherwise: string) => value.trim() || otherwise;

/** Reads the tokens that hold at an element. */
export function readLook(element: Element): SheetLook {
  const style = getComputedStyle(element);
  const token = (name: string, otherwise: string) => plain(style.getPropertyValue(name), otherwise);
  const paper = token("--paper", "#888277");
  const pool = parsePool(token("--pool", `circle 430px, ${paper}`));
  return {
    ink: token("--ink", "#060505"),
    paper,
    grain: Number(token("--grain", "0.16")),
    pool,
    poolLow: parsePool(token("--pool-low", `circle ${pool.radiusPx}px, ${paper}`)),
    words: token("--words", "serif"),
    figures: token("--figures", "sans-serif"),
    dim: channelsOf(paper)[2] === 0,
  };
}

/** Whether two looks print alike. */
export const sameLook = (a: SheetLook, b: SheetLook): boolean => JSON.stringify(a) === JSON.stringify(b);
