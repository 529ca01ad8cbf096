/** How texts come to the bench and go from it. */
import type { Ref } from "preact";
import { useRef } from "preact/hooks";
import { FilePicker } from "../FilePicker.tsx";
import type { Draft } from "./draft.ts";
import { sayBench } from "./words.ts";

interface Props {
  /** The button that opens the list of lessons: the focus comes back to it. */
  readonly chooser: Ref<HTMLButtonElement>;
  readonly draft: Draft;
  readonly choosing: boolean;
  readonly onChoose: () => void;
  readonly onFile: (file: File) => void;
  readonly onSave: () => void;
  readonly onBringBack: () => void;
}

export function FileTools({ chooser, draft, choosing, onChoose, onFile, onSave, onBringBack }: Props) {
  const picker = useRef<HTMLInputElement>(null);
  const before = draft.before.value;
  return (
    <fieldset class="bench-tools" aria-label={sayBench("files")}>
      <button ref={chooser} type="button" class="second-button" aria-expanded={choosing} onClick={onChoose}>
        {sayBench("startFrom")}
      </button>
      <button type="button" class="second-button" onClick={() => picker.current?.click()}>
        {sayBench("openFile")}
      </button>
      <FilePicker picker={picker} accept=".yaml,.yml,text/yaml,text/plain" onFile={onFile} />
      <button type="button" class="second-button" disabled={draft.file.value.text === ""} onClick={onSave}>
        {sayBench("saveFile")}
      </button>
      {before && (
        <button type="button" class="second-button" onClick={onBringBack}>
          {sayBench("bringBack")}
        </button>
      )}
    </fieldset>
  );
}
