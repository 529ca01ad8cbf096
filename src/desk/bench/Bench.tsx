/** The bench: the author's text at the left, at the right what to mend, and the try. */
import { useCallback, useRef, useState } from "preact/hooks";
import type { Finding } from "#core/lesson/findings.ts";
import { LARGEST_BYTES } from "#core/lesson/largest.ts";
import type { Desk } from "../app/begin.ts";
import { Tools } from "../play/Corners.tsx";
import { WorkHead } from "../WorkHead.tsx";
import type { Draft } from "./draft.ts";
import { caretTo, Editor } from "./Editor.tsx";
import { FileTools } from "./FileTools.tsx";
import { fileNameFor, kBOf, readFile, saveAsFile } from "./files.ts";
import { StartFrom } from "./StartFrom.tsx";
import { shippedText } from "./shippedTexts.ts";
import { useDrop } from "./useDrop.ts";
import { Verdicts } from "./Verdicts.tsx";
import { sayBench } from "./words.ts";

const MOST_KB = kBOf(LARGEST_BYTES);
const NO_FINDINGS: readonly Finding[] = [];

/** What was done last, or why it was not. */
type Notice = { readonly words: string; readonly isTrouble: boolean };

interface Props {
  readonly desk: Desk;
  readonly draft: Draft;
  readonly onTry: () => void;
}

/** The acts of the tools, and what they last said. */
function useFiles(draft: Draft) {
  const [notice, setNotice] = useState<Notice | null>(null);
  const trouble = useCallback((words: string) => setNotice({ words, isTrouble: true }), []);
  const take = useCallback(
    (name: string, text: string) => {
      const keepsOne = draft.file.value.text.trim() !== "";
      draft.take({ name, text });
      const words = sayBench("opened", { name });
      setNotice({ words: keepsOne ? `${words} ${sayBench("kept")}` : words, isTrouble: false });
    },
    [draft],
  );
  const open = useCallback(
    async (file: File) => {
      const read = await readFile(file);
      if ("file" in read) take(read.file.name, read.file.text);
      else if (read.refused === "large") trouble(sayBench("large", { kB: read.kB, most: MOST_KB }));
      else trouble(sayBench("unreadable"));
    },
    [take, trouble],
  );
  const save = () => {
    saveAsFile(draft.file.value);
    setNotice({ words: sayBench("saved", { name: fileNameFor(draft.file.value) }), isTrouble: false });
  };
  const bringBack = () => {
    draft.bringBack();
    setNotice({ words: sayBench("broughtBack"), isTrouble: false });
  };
  return { notice, clear: () => setNotice(null), trouble, take, open, save, bringBack };
}

export function Bench({ desk, draft, onTry }: Props) {
  const chooser = useRef<HTMLButtonElement>(null);
  const area = useRef<HTMLTextAreaElement>(null);
  const [choosing, setChoosing] = useState(false);
  const { notice, clear, trouble, take, open, save, bringBack } = useFiles(draft);
  const isOver = useDrop(open);
  const { text, name } = draft.file.value;
  const shown = draft.shown.value;
  const findings = shown?.kind === "checked" ? shown.findings : NO_FINDINGS;
  const toText = () => requestAnimationFrame(() => area.current && caretTo(area.current, { line: 1, column: 1 }));
  const takeShipped = async (lessonId: string) => {
    setChoosing(false);
    try {
      take(`${lessonId}.yaml`, await shippedText(lessonId));
      toText();
    } catch {
      trouble(sayBench("unreadable"));
    }
  };
  return (
    <main class={isOver ? "bench over" : "bench"}>
      <WorkHead
        class="bench-head"
        toStart={sayBench("toStart")}
        title={sayBench("title")}
        tagline={sayBench("tagline")}
      />
      <FileTools
        chooser={chooser}
        draft={draft}
        choosing={choosing}
        onChoose={() => setChoosing(!choosing)}
        onFile={(file) => void open(file)}
        onSave={save}
        onBringBack={() => {
          bringBack();
          toText();
        }}
      />
      {choosing && (
        <StartFrom
          lessons={desk.lessons}
          onTake={({ id }) => void takeShipped(id)}
          onClose={() => {
            setChoosing(false);
            chooser.current?.focus();
          }}
        />
      )}
      <p class="bench-notice" role={notice?.isTrouble ? "alert" : "status"}>
        {isOver ? sayBench("dropHere") : notice?.words}
      </p>
      <Editor
        text={text}
        name={name}
        findings={findings}
        area={area}
        onType={(typed) => {
          clear();
          draft.type(typed);
        }}
        onTooLarge={(kB) => trouble(sayBench("largePaste", { kB, most: MOST_KB }))}
      />
      {!choosing && (
        <div class="bench-side">
          {desk.store.trouble !== "none" && <p class="aside">{sayBench("notKept")}</p>}
          <Verdicts draft={draft} onTry={onTry} onGo={(finding) => area.current && caretTo(area.current, finding)} />
        </div>
      )}
      <div class="bench-corner">
        <Tools />
      </div>
    </main>
  );
}
