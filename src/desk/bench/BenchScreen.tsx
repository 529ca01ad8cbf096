/** The lesson bench, or the try of what lies on it. */
import "../styles/play.css";
import "../styles/bench.css";
import { useEffect, useState } from "preact/hooks";
import type { Desk } from "../app/begin.ts";
import { goTo } from "../app/state.ts";
import { createThinkingCall } from "../workers/createCalls.ts";
import { Bench } from "./Bench.tsx";
import { createChecker } from "./checker.ts";
import { type Draft, openDraft } from "./draft.ts";
import { Trial } from "./Trial.tsx";

/** The text as it was kept; null until it is there. It outlives the try. */
function useDraft({ store }: Desk): Draft | null {
  const [draft, setDraft] = useState<Draft | null>(null);
  useEffect(() => {
    let isHere = true;
    let opened: Draft | null = null;
    void openDraft(store, createChecker(createThinkingCall)).then((it) => {
      opened = it;
      if (isHere) setDraft(it);
      else it.end();
    });
    const keep = () => opened?.keepNow();
    addEventListener("pagehide", keep);
    document.addEventListener("visibilitychange", keep);
    return () => {
      isHere = false;
      opened?.end();
      removeEventListener("pagehide", keep);
      document.removeEventListener("visibilitychange", keep);
    };
  }, [store]);
  return draft;
}

const toBench = () => goTo({ kind: "bench", trying: false });

/** Waits for the check of a kept text; a text that cannot be tried goes back to the bench. */
function Try({ draft, desk }: { draft: Draft; desk: Desk }) {
  const verdict = draft.verdict.value;
  const lesson = verdict?.kind === "checked" ? verdict.lesson : null;
  const cannot = draft.file.value.text.trim() === "" || (verdict !== null && lesson === null);
  useEffect(() => {
    if (cannot) toBench();
  }, [cannot]);
  if (lesson) return <Trial lesson={lesson} sound={desk.sound} onBack={toBench} />;
  return <main class="waiting" aria-busy="true" />;
}

interface Props {
  readonly desk: Desk;
  readonly trying: boolean;
}
export function BenchScreen({ desk, trying }: Props) {
  const draft = useDraft(desk);
  if (!draft) return <main class="waiting" aria-busy="true" />;
  if (trying) return <Try draft={draft} desk={desk} />;
  return <Bench desk={desk} draft={draft} onTry={() => goTo({ kind: "bench", trying: true })} />;
}
