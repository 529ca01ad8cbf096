/** What is kept of a reader's screen, and how it is read again. */
import { CARD_MM } from "../../stage/screenLight.ts";

/** How far the eye is from the screen, mm: a phone in the hand, a desk, a lit wall across a room (our own round figures). */
export const DISTANCES_MM = { hand: 350, desk: 600, hall: 5000 } as const;
export type Distance = keyof typeof DISTANCES_MM;
export interface ScreenFit {
  /** The least luminance that shows, white is 1; null: not told. */
  readonly leastLuminance: number | null;
  /** Width of a bank card on the screen, CSS px; null: not told. */
  readonly cardPx: number | null;
  readonly distance: Distance;
  /** Thrown on a wall: stars are larger. */
  readonly projector: boolean;
}
export const NOT_FITTED: ScreenFit = { leastLuminance: null, cardPx: null, distance: "desk", projector: false };
/** Screens of 2 to 15 CSS px a mm; few are beyond 3 to 8. */
export const CARD_PX = { least: Math.ceil(2 * CARD_MM.width), most: Math.floor(15 * CARD_MM.width) } as const;

const within = (value: unknown, low: number, high: number): number | null =>
  typeof value === "number" && value >= low && value <= high ? value : null;
const isDistance = (value: unknown): value is Distance =>
  typeof value === "string" && Object.hasOwn(DISTANCES_MM, value);

/** Reads what was kept; whatever does not hold is as if it had not been told. */
export function readFit(kept: unknown): ScreenFit {
  if (typeof kept !== "object" || kept === null) return NOT_FITTED;
  const { leastLuminance, cardPx, distance, projector } = kept as Readonly<Record<string, unknown>>;
  return {
    leastLuminance: within(leastLuminance, 0, 1),
    cardPx: within(cardPx, CARD_PX.least, CARD_PX.most),
    distance: isDistance(distance) ? distance : NOT_FITTED.distance,
    projector: projector === true,
  };
}
