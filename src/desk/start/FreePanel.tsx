/** Free practice: a word, the learner's own or one that chance gives, the site's sky, and the hop through the sky that the word grows. */
import { useId, useState } from "preact/hooks";
import { SITE_SKIES } from "#core/lesson/siteSkies.ts";
import { freeSky } from "../app/state.ts";
import { freeId, saySeed, USUAL_SKY } from "../seed/seedIds.ts";
import { drawSeedWord } from "../seed/words.ts";
import { Panel } from "./Panels.tsx";
import { SkySlider } from "./SkySlider.tsx";

interface Props {
  readonly onOpen: (lessonId: string) => void;
  readonly onBack: () => void;
}

export function FreePanel({ onOpen, onBack }: Props) {
  const [word, setWord] = useState(() => drawSeedWord(Math.random));
  const id = useId();
  const sky = SITE_SKIES.find((one) => one === freeSky.value) ?? USUAL_SKY;
  const lessonId = freeId(word, sky);
  const isWrong = lessonId === null && word.trim() !== "";
  return (
    <Panel title={saySeed("freeRow")} onBack={onBack}>
      <p>{saySeed("freeSay")}</p>
      <form
        class="free-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (lessonId) onOpen(lessonId);
        }}
      >
        <label for={id}>{saySeed("freeLabel")}</label>
        <input
          id={id}
          class="line-field"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          maxLength={40}
          value={word}
          aria-invalid={isWrong}
          aria-describedby={`${id}-wrong`}
          onInput={({ currentTarget }) => setWord(currentTarget.value)}
        />
        <p id={`${id}-wrong`} class="aside" role="status">
          {isWrong ? saySeed("freeWrong") : ""}
        </p>
        <SkySlider
          sky={sky}
          onSky={(next) => {
            freeSky.value = next;
          }}
        />
        <div class="free-buttons">
          <button type="submit" class="main-button" disabled={!lessonId}>
            {saySeed("freeBegin")}
          </button>
          <button type="button" class="second-button" onClick={() => setWord(drawSeedWord(Math.random))}>
            {saySeed("freeOther")}
          </button>
        </div>
      </form>
    </Panel>
  );
}
