/** The text on the bench: kept as it is typed, checked as it is typed. */
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Store } from "../app/ports.ts";
import type { Checker, Verdict } from "./checker.ts";
import type { NamedText } from "./files.ts";

/** Milliseconds from the last key to the check, and to the writing down. */
const CHECK_AFTER_MS = 120;
const KEEP_AFTER_MS = 400;
/** A change by more letters than this came in one go, and no key follows. */
const MOST_TYPED = 20;
const SETTING = "bench";
const EMPTY: NamedText = { name: "", text: "" };

export interface Draft {
  readonly file: ReadonlySignal<NamedText>;
  /** What was on the bench before another text took its place; null where nothing would be lost. */
  readonly before: ReadonlySignal<NamedText | null>;
  /** Of the text as it stands; null while it is unchecked, or empty. */
  readonly verdict: ReadonlySignal<Verdict | null>;
  /** The last verdict, while the next is on its way: a list does not flicker while one types. */
  readonly shown: ReadonlySignal<Verdict | null>;
  type(text: string): void;
  /** Another text takes the place of this one, which is kept as the one before. */
  take(file: NamedText): void;
  /** Changes places with the text before. */
  bringBack(): void;
  /** Writes down what is not yet written. */
  keepNow(): void;
  end(): void;
}

const isNamedText = (value: unknown): value is NamedText =>
  typeof value === "object" &&
  value !== null &&
  typeof (value as NamedText).name === "string" &&
  typeof (value as NamedText).text === "string";

interface Kept {
  readonly file: NamedText;
  readonly before: NamedText | null;
}
const keptOf = (value: unknown): Kept => {
  const { file, before } = (typeof value === "object" && value !== null ? value : {}) as Partial<
    Record<keyof Kept, unknown>
  >;
  return { file: isNamedText(file) ? file : EMPTY, before: isNamedText(before) ? before : null };
};

/** Takes up the text that was kept, and checks it. The checker ends with the draft. */
export async function openDraft(store: Pick<Store, "getSetting" | "setSetting">, checker: Checker): Promise<Draft> {
  const kept = keptOf(await store.getSetting(SETTING));
  const file = signal(kept.file);
  const before = signal(kept.before);
  const verdict = signal<Verdict | null>(null);
  const shown = signal<Verdict | null>(null);
  let keepTimer: ReturnType<typeof setTimeout> | undefined;
  let checkTimer: ReturnType<typeof setTimeout> | undefined;
  let isChecking = false;
  let isEnded = false;

  const keepNow = () => {
    if (keepTimer === undefined) return;
    clearTimeout(keepTimer);
    keepTimer = undefined;
    void store.setSetting(SETTING, { file: file.value, before: before.value });
  };
  /** One check at a time; a text that changed meanwhile is checked next, those in between never. */
  const check = async () => {
    if (isChecking) return;
    isChecking = true;
    for (let text: string | null = null; !isEnded && text !== file.value.text; ) {
      text = file.value.text;
      const found = text.trim() === "" ? null : await checker.check(file.value.name, text);
      if (text !== file.value.text || isEnded) continue;
      verdict.value = found;
      shown.value = found;
    }
    isChecking = false;
  };
  const changed = (waitMs: number) => {
    verdict.value = null;
    clearTimeout(checkTimer);
    checkTimer = setTimeout(() => void check(), waitMs);
    keepTimer ??= setTimeout(keepNow, KEEP_AFTER_MS);
  };
  const replace = (next: NamedText) => {
    if (file.value.text.trim() !== "" && file.value.text !== next.text) before.value = file.value;
    file.value = next;
    shown.value = null;
    changed(0);
  };

  if (file.value.text !== "") void check();
  return {
    file,
    before,
    verdict,
    shown,
    type(text) {
      const by = Math.abs(text.length - file.value.text.length);
      if (text === file.value.text) return;
      file.value = { ...file.value, text };
      changed(by > MOST_TYPED ? 0 : CHECK_AFTER_MS);
    },
    take: replace,
    bringBack() {
      if (before.value) replace(before.value);
    },
    keepNow,
    end() {
      keepNow();
      isEnded = true;
      clearTimeout(checkTimer);
      checker.end();
    },
  };
}
