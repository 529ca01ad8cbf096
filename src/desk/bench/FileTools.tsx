/** How texts come to the bench and go from it. */
import type { Ref } from "preact";
import { useRef } from "preact/hooks";
import { say } from "../words/say.ts";
import type { Draft } from "./draft.ts";

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
    <fieldset class="bench-tools" aria-label={say("bench.files")}>
      <button ref={chooser} type="button" class="second-button" aria-expanded={choosing} onClick={onChoose}>
        {say("bench.startFrom")}
      </button>
      <button type="button" class="second-button" onClick={() => picker.current?.click()}>
        {say("bench.openFile")}
      </button>
      <input
        ref={picker}
        type="file"
        accept=".yaml,.yml,text/yaml,text/plain"
        hidden
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          // The same file may be opened again.
          if (file) onFile(file);
          currentTarget.value = "";
        }}
      />
      <button type="button" class="second-button" disabled={draft.file.value.text === ""} onClick={onSave}>
        {say("bench.saveFile")}
      </button>
      {before && (
        <button type="button" class="second-button" onClick={onBringBack}>
          {say("bench.bringBack")}
        </button>
      )}
    </fieldset>
  );
}
