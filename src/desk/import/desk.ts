/** What the screen of one's own catalogue shows and may ask for. */
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Progress, Task, Told } from "./messages.ts";
import { currentOf, type OwnBase, type OwnCatalogue, openOwnBase, removeOwn, sweep, undoOwn } from "./ownBase.ts";

/** What happened last. */
export type Ending =
  | { readonly kind: "taken" | "cancelled" | "removed" }
  | { readonly kind: "failed"; readonly why: Why; readonly what: string; readonly hint: string };
export interface Running {
  readonly fileName: string;
  readonly progress: Progress;
}
export interface ImportDesk {
  /** The catalogue that is there, or null. */
  readonly own: ReadonlySignal<OwnCatalogue | null>;
  readonly running: ReadonlySignal<Running | null>;
  readonly ending: ReadonlySignal<Ending | null>;
  /** Takes a file in; while one is being taken in, nothing happens. */
  take(file: File): void;
  /** Ends the import at once; what was there before stays. */
  cancel(): Promise<void>;
  remove(): Promise<void>;
  /** The screen is left: an import under way goes on. */
  leave(): void;
}

type Why = (Told & { kind: "failed" })["why"];

const startWorker = () =>
  new Worker(new URL("./import.worker.ts", import.meta.url), { type: "module", name: "import" });

/** The page's one desk, and how many screens show it (one that is left while it opens makes two for a moment). */
let page: Promise<ImportDesk> | null = null;
let visits = 0;

/** The desk, for a screen that will `leave` it. It stays while an import is under way. Rejects where the browser keeps nothing. */
export function importDesk(): Promise<ImportDesk> {
  visits += 1;
  page ??= openOwnBase()
    .then(createImportDesk)
    .catch((error: unknown) => {
      page = null;
      visits = 0;
      throw error;
    });
  return page;
}

async function createImportDesk(base: OwnBase): Promise<ImportDesk> {
  const own = signal(await currentOf(base));
  const running = signal<Running | null>(null);
  const ending = signal<Ending | null>(null);
  let worker: Worker | null = null;
  let id = "";
  void sweep(base).catch(() => undefined);

  const settle = async (how: Ending) => {
    worker?.terminate();
    worker = null;
    own.value = await currentOf(base);
    running.value = null;
    ending.value = how;
    // A hop may still be among the stars of before: they go at the end of the next visit.
    if (visits > 0) await sweep(base);
  };
  const failed = (why: Why, what: string, hint: string) => void settle({ kind: "failed", why, what, hint });
  const hear = (told: Told, fileName: string) => {
    if (told.kind === "progress") running.value = { fileName, progress: told.progress };
    else if (told.kind === "done") void settle({ kind: "taken" });
    else failed(told.why, told.error.message, told.error.hint);
  };
  const stop = () => {
    worker?.terminate();
    worker = null;
    // It may have been written in the moment before: then it is taken back.
    return undoOwn(base, id, own.value);
  };

  return {
    own,
    running,
    ending,
    take(file) {
      if (running.value) return;
      id = crypto.randomUUID();
      const mine = startWorker();
      worker = mine;
      ending.value = null;
      const progress: Progress = { stage: "reading", rows: 0, doneBytes: 0, ofBytes: file.size };
      running.value = { fileName: file.name, progress };
      mine.onmessage = ({ data }: MessageEvent<Told>) => {
        if (worker === mine) hear(data, file.name);
      };
      mine.onerror = ({ message }) => failed("other", message, "");
      mine.postMessage({ file, id } satisfies Task);
    },
    async cancel() {
      if (!worker) return;
      await stop().catch(() => undefined);
      running.value = null;
      ending.value = { kind: "cancelled" };
    },
    async remove() {
      await removeOwn(base);
      own.value = null;
      ending.value = { kind: "removed" };
    },
    leave() {
      visits -= 1;
      if (visits > 0 || running.value) return;
      page = null;
      void sweep(base)
        .catch(() => undefined)
        .finally(() => base.close());
    },
  };
}
