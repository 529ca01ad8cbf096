/** One box that finds what has a name. It tells what and where in words, and rings it on the sheet; it never moves the tube. */
import "../styles/search.css";
import { useEffect, useId, useMemo, useRef, useState } from "preact/hooks";
import { bodiesOf } from "#core/lesson/bodies.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import type { NamedStar } from "#core/sky/names/types.ts";
import { ownInUse } from "../import/inUse.ts";
import { bodiesAt } from "../play/skies.ts";
import { looksReady } from "../words/looks.ts";
import { type Answer, answersTo, moreWords, placeWords, whatWords } from "./answers.ts";
import { found, pageHolds, searchShown, sheetPage } from "./found.ts";
import { searchedAtMs, searchedSkies } from "./searched.ts";
import { saySearch } from "./words.ts";

interface Props {
  /** The lesson that is hopped, or null. */
  readonly lesson: Lesson | null;
  readonly lessons: readonly Lesson[];
}

const close = () => {
  searchShown.value = false;
};

const MOST = 8;
function countWords(query: string, count: number): string {
  if (query.trim() === "") return "";
  if (count === 0) return saySearch("none");
  if (count >= MOST) return saySearch("atLeast", { count });
  return count === 1 ? saySearch("one") : saySearch("count", { count });
}

/** What was chosen, in words. */
function Chosen({ answer }: { answer: Answer }) {
  const { name, otherNames, dir } = answer.match;
  const page = sheetPage.value;
  return (
    <article class="search-found">
      <h3>{name}</h3>
      <p>{whatWords(answer)}</p>
      {otherNames.length > 0 && <p class="aside">{saySearch("alsoCalled", { names: otherNames.join(", ") })}</p>}
      <p class="figures">{placeWords(dir)}</p>
      {moreWords(answer).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {page && <p class="aside">{pageHolds(page, dir) ? saySearch("marked") : saySearch("beyond")}</p>}
    </article>
  );
}

const NO_BODIES: readonly MovingBody[] = [];
/** Where the planets stand; none until that is worked out, and until names and looks are there in the language. */
function useBodies(lesson: Lesson | null): readonly MovingBody[] {
  const [bodies, setBodies] = useState(NO_BODIES);
  useEffect(() => {
    let here = true;
    void Promise.all([bodiesAt(searchedAtMs(lesson, Date.now())), looksReady()]).then(
      ([them]) => here && setBodies(them),
      () => undefined,
    );
    return () => {
      here = false;
    };
  }, [lesson]);
  return bodies;
}

const NO_NAMES: readonly NamedStar[] = [];
/** The names of the reader's own catalogue, where hops take its stars or none is under way. */
function useOwnNames(lesson: Lesson | null): readonly NamedStar[] {
  const [names, setNames] = useState(NO_NAMES);
  const isAsked = lesson === null || ownInUse.value;
  useEffect(() => {
    let here = true;
    if (isAsked)
      void import("../import/keptNames.ts")
        .then(({ keptNames }) => keptNames())
        .then(
          (them) => here && setNames(them),
          // Without a data base, or with a changed one, the other skies are searched.
          () => undefined,
        );
    return () => {
      here = false;
    };
  }, [isAsked]);
  return names;
}

/** The focus goes to the box, and back to whoever had it. */
function useFocus() {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    box.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return box;
}

export function SearchPanel({ lesson, lessons }: Props) {
  const bodies = useBodies(lesson);
  const own = useOwnNames(lesson);
  const skies = useMemo(
    () => searchedSkies(lesson, lessons, bodies, own, lesson ? bodiesOf(lesson) : []),
    [lesson, lessons, bodies, own],
  );
  const [query, setQuery] = useState("");
  const [at, setAt] = useState(0);
  const [chosen, setChosen] = useState<Answer | null>(null);
  const answers = useMemo(() => answersTo(query, skies), [query, skies]);
  const box = useFocus();
  const id = useId();
  const isOpen = answers.length > 0 && !chosen;
  const choose = (answer: Answer | undefined) => {
    if (!answer) return;
    setChosen(answer);
    found.value = { dir: answer.match.dir };
  };
  const type = (text: string) => {
    setQuery(text);
    setAt(0);
    setChosen(null);
  };
  const acts: Readonly<Record<string, () => void>> = {
    ArrowDown: () => setAt((at + 1) % Math.max(1, answers.length)),
    ArrowUp: () => setAt((at + answers.length - 1) % Math.max(1, answers.length)),
    Enter: () => choose(answers[at]),
    Escape: () => (query === "" || chosen ? close() : type("")),
  };
  const onKey = (event: KeyboardEvent) => {
    // Keys in here are letters of a name, and nobody else's.
    event.stopPropagation();
    const isInBox = event.target === box.current;
    const act = event.key === "Escape" ? acts.Escape : isInBox && !event.isComposing ? acts[event.key] : undefined;
    if (!act) return;
    event.preventDefault();
    act();
  };
  return (
    <search class="side-panel search-panel" aria-labelledby={`${id}-title`} onKeyDown={onKey}>
      <h2 id={`${id}-title`}>{saySearch("title")}</h2>
      <label for={`${id}-box`}>{saySearch("label")}</label>
      <input
        ref={box}
        id={`${id}-box`}
        class="line-field"
        type="text"
        role="combobox"
        autocomplete="off"
        autocapitalize="off"
        spellcheck={false}
        maxLength={60}
        placeholder={saySearch("example")}
        aria-autocomplete="list"
        aria-expanded={isOpen}
        aria-controls={`${id}-list`}
        aria-activedescendant={isOpen ? `${id}-${at}` : undefined}
        value={query}
        onInput={({ currentTarget }) => type(currentTarget.value)}
      />
      <p class="aside" role="status">
        {chosen ? "" : countWords(query, answers.length)}
      </p>
      <div id={`${id}-list`} role="listbox" aria-label={saySearch("results")} hidden={!isOpen}>
        {isOpen &&
          answers.map((answer, i) => (
            // The box keeps the focus and has the keys; these are for pointers.
            <button
              type="button"
              key={`${answer.sky.seed} ${answer.match.kind} ${answer.match.name} ${i}`}
              id={`${id}-${i}`}
              class="row"
              role="option"
              tabIndex={-1}
              aria-selected={i === at}
              onPointerDown={(event) => event.preventDefault()}
              onClick={() => choose(answer)}
            >
              <span>{answer.match.name}</span>
              <span class="price">{whatWords(answer)}</span>
            </button>
          ))}
      </div>
      <div aria-live="polite">{chosen && <Chosen answer={chosen} />}</div>
      <button type="button" class="second-button" onClick={close}>
        {saySearch("close")}
      </button>
    </search>
  );
}
