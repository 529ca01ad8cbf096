/** What limits the view: one small bar, a piece for each cause by its length and its hatching; and a sentence. */
import { screenReachNow } from "../screen/fit.ts";
import { fixed, say } from "../words/say.ts";
import { causeName, LEAST_MAG, limitWords } from "./limits.ts";
import type { PlayModel } from "./model.ts";

/** The bar alone, which says itself to those who hear it or rest on it. */
export function LimitBar({ model }: { model: PlayModel }) {
  const shares = model.limits.value;
  if (shares.length === 0) return null;
  const told = shares.map(({ cause, mag }) => say("play.limitPart", { cause: causeName(cause), mag: fixed(mag, 1) }));
  const said = `${limitWords(shares)}. ${told.join(", ")}.`;
  return (
    <div class="limit-bar" role="img" aria-label={said} title={said}>
      {shares.map(({ cause, mag }) => (
        <span key={cause} class={`limit-part limit-${cause}`} style={{ flexGrow: mag }} />
      ))}
    </div>
  );
}

/** Where the screen cannot show the limit, it says so. */
export function ScreenHides() {
  const { hiddenMag } = screenReachNow.value;
  return hiddenMag < LEAST_MAG ? null : <p>{say("play.screenHides", { mag: fixed(hiddenMag, 1) })}</p>;
}

/** The bar with its sentence and what each piece is. */
export function LimitsTold({ model }: { model: PlayModel }) {
  const shares = model.limits.value;
  return (
    <div class="row limits-told">
      <p>{limitWords(shares)}.</p>
      <ul>
        {shares.map(({ cause, mag }) => (
          <li key={cause}>
            <span class={`limit-part limit-${cause}`} />
            {say("play.limitPart", { cause: causeName(cause), mag: fixed(mag, 1) })}
          </li>
        ))}
      </ul>
      <ScreenHides />
    </div>
  );
}
