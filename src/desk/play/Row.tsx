/** A row of help: what it offers at the left, its price at the right. */
import { say } from "../words/say.ts";

interface RowProps {
  readonly lead: string;
  readonly price: string;
  readonly off?: boolean;
  readonly pressed?: boolean;
  readonly onPress: () => void;
}

/** Its whole width is one button; `pressed` where it turns something on or off. */
export function Row({ lead, price, off = false, pressed, onPress }: RowProps) {
  return (
    <button type="button" class="row" disabled={off} aria-pressed={pressed} onClick={onPress}>
      <span>{lead}</span>
      <span class="price">{price}</span>
    </button>
  );
}

/** A price in words. */
export const costs = (points: number) => (points > 0 ? say("play.costs", { points }) : say("play.free"));
