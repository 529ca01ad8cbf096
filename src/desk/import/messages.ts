/** What the page and the import's worker say to each other. */
import type { PlainError } from "../workers/methods.ts";

export interface Task {
  readonly file: File;
  /** A random word for this import. */
  readonly id: string;
}
/** How far it is. `doneBytes` of `ofBytes` of the file have been read. */
export interface Progress {
  readonly stage: "reading" | "sorting" | "keeping";
  readonly rows: number;
  readonly doneBytes: number;
  readonly ofBytes: number;
}
export type Told =
  | { readonly kind: "progress"; readonly progress: Progress }
  | { readonly kind: "done" }
  /** `why`: the file is no good; it cannot be read; there is no room; anything else. */
  | { readonly kind: "failed"; readonly why: "file" | "unreadable" | "full" | "other"; readonly error: PlainError };
