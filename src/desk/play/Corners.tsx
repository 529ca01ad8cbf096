/** The corners outside the circle: the lesson, the page's tools, and the night. */
import "../styles/grain.css";
import type { ComponentChildren } from "preact";
import { langOf } from "../app/langOf.ts";
import { isSeeded } from "../app/lessonOf.ts";
import { homeHash, isTry, keysShown, lamp, lampLevel, nextLamp, soundOn } from "../app/state.ts";
import { Icon, type IconName } from "../icons.tsx";
import { say } from "../words/say.ts";
import { LimitBar } from "./LimitBar.tsx";
import type { PlayModel } from "./model.ts";

/** Where "back" leads to, short, and in full. */
function backWords({ isLook, lesson: { id, number, of } }: PlayModel): readonly [shown: string, said: string] {
  if (isTry()) return [say("play.toBench"), say("play.toBench")];
  if (isLook || isSeeded(id)) return [say("play.toStart"), say("play.toStart")];
  return [say("play.lessonOf", { number, of }), say("play.toCourse", { number, of })];
}

export function LessonTitle({ model }: { model: PlayModel }) {
  const [shown, said] = backWords(model);
  return (
    <header class="lesson-title">
      <a class="aside" href={homeHash()} aria-label={said}>
        <Icon name="back" />
        <span>{shown}</span>
      </a>
      <h1 lang={langOf(model.lesson)}>{model.lesson.title}</h1>
      {model.grain.value && <p class="aside grain-said">{say("play.grainShown")}</p>}
      {model.ownStars && <p class="aside grain-said">{say("play.ownStars")}</p>}
    </header>
  );
}

interface ToolProps {
  readonly icon: IconName;
  readonly words: string;
  readonly said?: string;
  readonly pressed?: boolean;
  readonly onPress: () => void;
}
export function Tool({ icon, words, said, pressed, onPress }: ToolProps) {
  return (
    <button type="button" class="tool" aria-label={said} aria-pressed={pressed} onClick={onPress}>
      <Icon name={icon} />
      <span>{words}</span>
    </button>
  );
}

const LAMPS = {
  normal: { words: "play.lampNormal", said: "play.lampNormalSaid" },
  red: { words: "play.lampRed", said: "play.lampRedSaid" },
  amber: { words: "play.lampAmber", said: "play.lampAmberSaid" },
} as const;
/** Under the least, small words would no longer stand out from the table. */
const LEVEL = { least: 170, most: 235, step: 5 } as const;

function Brightness() {
  if (lamp.value === "normal") return null;
  return (
    <input
      class="brightness"
      type="range"
      aria-label={say("play.brightness")}
      min={LEVEL.least}
      max={LEVEL.most}
      step={LEVEL.step}
      value={lampLevel.value}
      onInput={({ currentTarget }) => {
        lampLevel.value = currentTarget.valueAsNumber;
      }}
    />
  );
}

/** Keys, sound and lamp; the lamp's word is what a press brings. Before its brightness stands what else there is. */
export function Tools({ children }: { readonly children?: ComponentChildren }) {
  const { words, said } = LAMPS[lamp.value];
  return (
    <fieldset class="tools" aria-label={say("play.tools")}>
      <Tool
        icon="keys"
        words={say("play.keys")}
        pressed={keysShown.value}
        onPress={() => {
          keysShown.value = !keysShown.value;
        }}
      />
      <Tool
        icon={soundOn.value ? "sound" : "silent"}
        words={soundOn.value ? say("play.soundOn") : say("play.soundOff")}
        onPress={() => {
          soundOn.value = !soundOn.value;
        }}
      />
      <Tool icon="lamp" words={say(words)} said={say(said)} onPress={nextLamp} />
      {children}
      <Brightness />
    </fieldset>
  );
}

export function Conditions({ model }: { model: PlayModel }) {
  return (
    <section class="conditions" aria-label={say("play.conditions")}>
      {model.conditions.value.map((line, i) => (
        <p key={i}>{line}</p>
      ))}
      <LimitBar model={model} />
    </section>
  );
}
