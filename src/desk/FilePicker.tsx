/** The input behind a button that opens a file: hidden, pressed by that button. */
import type { Ref } from "preact";

interface Props {
  readonly picker: Ref<HTMLInputElement>;
  /** Kinds of file that are offered. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

export function FilePicker({ picker, accept, onFile }: Props) {
  return (
    <input
      ref={picker}
      type="file"
      accept={accept}
      hidden
      onChange={({ currentTarget }) => {
        const file = currentTarget.files?.[0];
        // The same file may be taken again.
        if (file) onFile(file);
        currentTarget.value = "";
      }}
    />
  );
}
