/** One's own catalogue: taken in, told of, used, removed. */
import { FilePicker } from "../FilePicker.tsx";
import "../styles/play.css";
import "../styles/import.css";
import { useCallback, useEffect, useRef, useState } from "preact/hooks";
import type { Sound } from "../app/ports.ts";
import { useDrop } from "../bench/useDrop.ts";
import { Tools } from "../play/Corners.tsx";
import { WorkHead } from "../WorkHead.tsx";
import { type ImportDesk, importDesk } from "./desk.ts";
import { ownInUse } from "./inUse.ts";
import type { LookPlace } from "./lookLesson.ts";
import { LookPart, OwnLook } from "./OwnLook.tsx";
import { ReadSheet } from "./ReadSheet.tsx";
import { endingWords, percentOf, progressWords, say, shownName } from "./words.ts";

/** An import that was under way when the screen was left is found again; `none` where the browser keeps nothing. */
function useDesk(): ImportDesk | "opening" | "none" {
  const [desk, setDesk] = useState<ImportDesk | "opening" | "none">("opening");
  useEffect(() => {
    let leave: () => void = () => undefined;
    let isHere = true;
    const open = async () => {
      const opened = await importDesk();
      if (!isHere) return opened.leave();
      leave = opened.leave;
      setDesk(opened);
    };
    void open().catch(() => isHere && setDesk("none"));
    return () => {
      isHere = false;
      leave();
    };
  }, []);
  return desk;
}

/** The file's button while nothing is under way; else how far it is, and the way out. */
function FilePart({ desk, onCancel }: { desk: ImportDesk; onCancel: () => void }) {
  const picker = useRef<HTMLInputElement>(null);
  const running = desk.running.value;
  return (
    <fieldset class="own-tools" aria-label={say("files")}>
      {running ? (
        <button key="cancel" id="own-cancel" type="button" class="second-button" onClick={onCancel}>
          {say("cancel")}
        </button>
      ) : (
        <button
          key="choose"
          id="own-choose"
          type="button"
          class={desk.own.value ? "second-button" : "main-button"}
          onClick={() => picker.current?.click()}
        >
          {say(desk.own.value ? "another" : "choose")}
        </button>
      )}
      <FilePicker
        picker={picker}
        accept=".csv,.vot,.votable,.xml,text/csv,application/x-votable+xml,text/xml"
        onFile={(file) => desk.take(file)}
      />
      {running && (
        <div class="own-progress">
          <progress aria-label={say("progress")} max={100} value={percentOf(running)} />
          <p class="figures-line">{progressWords(running)}</p>
          <p class="aside">{say("staying")}</p>
        </div>
      )}
    </fieldset>
  );
}

function UsePart({ desk, onLook }: { desk: ImportDesk; onLook: (place: LookPlace) => void }) {
  const isOn = ownInUse.value;
  return (
    <section class="own-use">
      <button
        type="button"
        class="row"
        aria-pressed={isOn}
        onClick={() => {
          ownInUse.value = !isOn;
        }}
      >
        <span>{say("use")}</span>
        <span class="price">{say(isOn ? "on" : "off")}</span>
      </button>
      <p>{say("useNote")}</p>
      <p class="aside">{say("notKept")}</p>
      <LookPart onLook={onLook} />
      <button
        type="button"
        class="second-button"
        disabled={desk.running.value !== null}
        onClick={() => {
          ownInUse.value = false;
          void desk.remove();
          document.getElementById("own-choose")?.focus();
        }}
      >
        {say("remove")}
      </button>
    </section>
  );
}

/** The parts that need a data base. */
function OwnParts({ desk, onLook }: { desk: ImportDesk; onLook: (place: LookPlace) => void }) {
  const take = useCallback((file: File) => desk.take(file), [desk]);
  const isOver = useDrop(take);
  const [own, running, ending] = [desk.own.value, desk.running.value, desk.ending.value];
  const wasRunning = useRef(false);
  useEffect(() => {
    // The button that had the focus is gone: the one in its place takes it.
    if (wasRunning.current === (running !== null)) return;
    wasRunning.current = running !== null;
    document.getElementById(running ? "own-cancel" : "own-choose")?.focus({ preventScroll: true });
  }, [running]);
  const words = ending ? endingWords(ending, own) : "";
  const began = running ? say("began", { name: shownName(running.fileName) }) : "";
  return (
    <>
      <div class={isOver ? "own-place over" : "own-place"}>
        <ReadSheet own={own} />
      </div>
      <div class="own-side">
        <FilePart desk={desk} onCancel={() => void desk.cancel()} />
        <p class="own-notice" role="status" data-ending={ending?.kind}>
          {isOver ? say("dropHere") : words || <span class="hidden-words">{began}</span>}
        </p>
        {own && <UsePart key={own.generation} desk={desk} onLook={onLook} />}
      </div>
    </>
  );
}

export function ImportScreen({ sound }: { sound: Sound }) {
  const [place, setPlace] = useState<LookPlace | null>(null);
  if (place) return <OwnLook place={place} sound={sound} onBack={() => setPlace(null)} />;
  return <Catalogue onLook={setPlace} />;
}

function Catalogue({ onLook }: { onLook: (place: LookPlace) => void }) {
  const desk = useDesk();
  return (
    <main class="own" aria-busy={desk === "opening"}>
      <WorkHead class="own-head" toStart={say("toStart")} title={say("title")} tagline={say("tagline")} />
      {desk === "none" && <p class="own-side">{say("noBase")}</p>}
      {typeof desk === "object" && <OwnParts desk={desk} onLook={onLook} />}
      <div class="own-corner">
        <Tools />
      </div>
    </main>
  );
}
