/** What limits the view: one small bar, a piece for each cause by its length and its hatching, and a sentence. */
import { say } from "../words/say.ts";
import { causeName, limitWords } from "./limits.ts";
import type { PlayModel } from "./model.ts";

export function LimitBar({ model }: { model: PlayModel }) {
  const shares = model.limits.value;
  const told = shares.map(({ cause, mag }) => say("play.limitPart", { cause: causeName(cause), mag: mag.toFixed(1) }));
  return (
    <>
      <p class="limit-words">{limitWords(shares)}</p>
      {shares.length > 0 && (
        <div class="limit-bar" role="img" aria-label={told.join(", ")} title={told.join("\n")}>
          {shares.map(({ cause, mag }) => (
            <span key={cause} class={`limit-part limit-${cause}`} style={{ flexGrow: mag }} />
          ))}
        </div>
      )}
    </>
  );
}
