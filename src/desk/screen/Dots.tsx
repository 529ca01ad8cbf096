/** Dots from just over black upwards: the faintest that shows is told by a tap. */
import { greenShare, luminanceOf, valueOfLuminance } from "../../stage/screenLight.ts";
import { lamp } from "../app/state.ts";
import { fixed } from "../words/say.ts";
import { greatestNow, screenFit, screenReachNow } from "./fit.ts";
import { say } from "./words.ts";

/** Display values of white's 255, in places that do not tell their order. */
const CODES = [69, 6, 132, 12, 200, 22, 96, 40] as const;

/** Told by another lamp, the dot that is nearest in light is the one. */
function chosenPlace(): number {
  const { leastLuminance } = screenFit.value;
  if (leastLuminance === null) return -1;
  const code = (255 * valueOfLuminance(lamp.value, leastLuminance)) / greatestNow();
  const off = CODES.map((one) => Math.abs(one - code));
  return off.indexOf(Math.min(...off));
}

function dotColour(code: number): string {
  const level = (code / 255) * greatestNow() * 255;
  if (lamp.value === "normal") return `rgb(${level} ${level} ${level})`;
  return `rgb(${level} ${level * greenShare(lamp.value)} 0)`;
}

function saidOfDots(): string {
  const { lift, hiddenMag } = screenReachNow.value;
  if (screenFit.value.leastLuminance === null) return say("dotsUntold");
  if (hiddenMag > 0) return say("hides", { mag: fixed(hiddenMag, 1) });
  return say(lift < 1 ? "dotsLifted" : "dotsAsDrawn");
}

export function Dots() {
  const chosen = chosenPlace();
  const choose = (code: number) => {
    const leastLuminance = luminanceOf(lamp.value, (code / 255) * greatestNow());
    screenFit.value = { ...screenFit.value, leastLuminance };
  };
  return (
    <section class="screen-step">
      <h2 id="screen-dots">{say("dotsTitle")}</h2>
      <p>{say("dots")}</p>
      <div class="screen-dots" role="radiogroup" aria-labelledby="screen-dots">
        {CODES.map((code, i) => (
          <label key={code}>
            <input
              type="radio"
              name="dot"
              class="hidden-words"
              aria-label={say("dot", { place: i + 1, of: CODES.length })}
              checked={i === chosen}
              onChange={() => choose(code)}
            />
            <span class="screen-dot" style={{ background: dotColour(code) }} />
          </label>
        ))}
      </div>
      <p role="status">{saidOfDots()}</p>
    </section>
  );
}
