/** The reader's screen as an instrument: what shows on it, and how large. */
import "../styles/play.css";
import "../styles/screen.css";
import { useEffect, useRef } from "preact/hooks";
import { Icon } from "../icons.tsx";
import { Tools } from "../play/Corners.tsx";
import { Card } from "./Card.tsx";
import { Dots } from "./Dots.tsx";
import { fitForProjector, screenFit } from "./fit.ts";
import { NOT_FITTED } from "./kept.ts";
import { say } from "./words.ts";

export function ScreenPage() {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    scrollTo(0, 0);
    heading.current?.focus({ preventScroll: true });
  }, []);
  const fit = screenFit.value;
  return (
    <main class="screen-fit">
      <header class="work-head">
        <a class="aside" href="#/">
          <Icon name="back" />
          <span>{say("toStart")}</span>
        </a>
        <h1 tabIndex={-1} ref={heading}>
          {say("title")}
        </h1>
        <p class="aside">{say("tagline")}</p>
      </header>
      <Dots />
      {fit.projector ? <p>{say("noted")}</p> : <Card />}
      <div class="screen-acts">
        <button
          type="button"
          class="second-button"
          aria-pressed={fit.projector}
          onClick={() => {
            screenFit.value = fitForProjector();
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
