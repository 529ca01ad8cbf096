/** The reader's screen as an instrument: what shows on it, and how large. */
import "../styles/play.css";
import "../styles/screen.css";
import { Tools } from "../play/Corners.tsx";
import { WorkHead } from "../WorkHead.tsx";
import { Card } from "./Card.tsx";
import { Dots } from "./Dots.tsx";
import { PROJECTOR, screenFit } from "./fit.ts";
import { NOT_FITTED } from "./kept.ts";
import { say } from "./words.ts";

export function ScreenPage() {
  const fit = screenFit.value;
  return (
    <main class="screen-fit">
      <WorkHead toStart={say("toStart")} title={say("title")} tagline={say("tagline")} />
      <Dots />
      {fit.projector ? <p>{say("noted")}</p> : <Card />}
      <div class="screen-acts">
        <button
          type="button"
          class="second-button"
          aria-pressed={fit.projector}
          onClick={() => {
            screenFit.value = PROJECTOR;
          }}
        >
          {say("projector")}
        </button>
        <button
          type="button"
          class="second-button"
          onClick={() => {
            screenFit.value = NOT_FITTED;
          }}
        >
          {say("undo")}
        </button>
        <p class="aside">{say("projectorNote")}</p>
      </div>
      <Tools />
    </main>
  );
}
