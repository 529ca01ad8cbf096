/** A look round among one's own stars: where to begin, then the field with every instrument, and nothing that is counted. */
import { useId, useMemo, useState } from "preact/hooks";
import type { Sound } from "../app/ports.ts";
import { Trial } from "../bench/Trial.tsx";
import { keptNames } from "./keptNames.ts";
import { type LookPlace, lookLesson, skyOfLook } from "./lookLesson.ts";
import { brightestPlace, namedPlace } from "./lookPlaces.ts";
import { useOwnSky } from "./useOwnSky.ts";
import { say } from "./words.ts";

/** Chooses where the look begins. */
export function LookPart({ onLook }: { onLook: (place: LookPlace) => void }) {
  const sky = useOwnSky();
  const id = useId();
  const [query, setQuery] = useState("");
  const [none, setNone] = useState("");
  const look = async (seek: () => Promise<LookPlace | null>, words: string) => {
    const place = await seek().catch(() => null);
    if (place) onLook(place);
    else setNone(words);
  };
  const names = () => keptNames().catch(() => []);
  return (
    <section class="own-look" aria-labelledby={`${id}-title`}>
      <h2 id={`${id}-title`}>{say("lookTitle")}</h2>
      <p>{say("lookNote")}</p>
      <button
        type="button"
        class="second-button"
        disabled={!sky}
        onClick={() => sky && void look(async () => brightestPlace(sky, await names()), say("lookEmpty"))}
      >
        {say("lookBrightest")}
      </button>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (sky)
            void look(async () => namedPlace(query, sky, await names()), say("lookNone", { name: query.trim() }));
        }}
      >
        <label for={`${id}-name`}>{say("lookLabel")}</label>
        <input
          id={`${id}-name`}
          class="line-field"
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          maxLength={60}
          value={query}
          aria-describedby={`${id}-none`}
          onInput={({ currentTarget }) => {
            setQuery(currentTarget.value);
            setNone("");
          }}
        />
        <button type="submit" class="second-button" disabled={!sky || query.trim() === ""}>
          {say("lookThere")}
        </button>
      </form>
      <p id={`${id}-none`} class="aside" aria-live="polite">
        {none}
      </p>
    </section>
  );
}

export function OwnLook({ place, sound, onBack }: { place: LookPlace; sound: Sound; onBack: () => void }) {
  const own = useOwnSky();
  const lesson = useMemo(() => lookLesson(place), [place]);
  const sky = useMemo(() => own && skyOfLook(own, place), [own, place]);
  if (!sky) return <main class="waiting" aria-busy="true" />;
  return <Trial lesson={lesson} sound={sound} sky={sky} lookFrom={place.dir} onBack={onBack} />;
}
