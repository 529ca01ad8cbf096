import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import type { Checker, Verdict } from "../../../src/desk/bench/checker.ts";
import { openDraft } from "../../../src/desk/bench/draft.ts";
import { createMemoryStore } from "../../../src/desk/store/memoryStore.ts";

/** A checker that notes the texts and takes its time. */
function slowChecker(ms = 50): Checker & { readonly texts: string[] } {
  const texts: string[] = [];
  return {
    texts,
    check: async (_file, text) => {
      texts.push(text);
      await new Promise((done) => setTimeout(done, ms));
      return { kind: "failed", why: text } satisfies Verdict;
    },
    end: () => undefined,
  };
}
const settle = () => vi.advanceTimersByTimeAsync(2000);

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe("the draft on the bench", () => {
  it("is kept as it is typed, and taken up again with its verdict", async () => {
    const store = createMemoryStore();
    const first = await openDraft(store, slowChecker());
    first.type("format: 1");
    await settle();
    first.end();
    const second = await openDraft(store, slowChecker());
    expect(second.file.value.text).toBe("format: 1");
    await settle();
    expect(second.verdict.value).toEqual({ kind: "failed", why: "format: 1" });
  });
  it("is written down at once when the page is left", async () => {
    const store = createMemoryStore();
    const draft = await openDraft(store, slowChecker());
    draft.type("last words");
    draft.keepNow();
    expect(await store.getSetting("bench")).toMatchObject({ file: { text: "last words" } });
  });
  it("checks the text as it stands, one check at a time, and none in between", async () => {
    const checker = slowChecker(300);
    const draft = await openDraft(createMemoryStore(), checker);
    draft.type("a");
    await vi.advanceTimersByTimeAsync(130);
    for (const text of ["ab", "abc", "abcd"]) {
      draft.type(text);
      await vi.advanceTimersByTimeAsync(20);
    }
    expect(draft.verdict.value).toBeNull();
    await settle();
    expect(checker.texts).toEqual(["a", "abcd"]);
    expect(draft.verdict.value).toEqual({ kind: "failed", why: "abcd" });
  });
  it("keeps the text that another one replaces, and changes them back", async () => {
    const draft = await openDraft(createMemoryStore(), slowChecker());
    draft.take({ name: "a.yaml", text: "one" });
    expect(draft.before.value).toBeNull();
    draft.take({ name: "b.yaml", text: "two" });
    expect(draft.before.value).toEqual({ name: "a.yaml", text: "one" });
    draft.bringBack();
    expect([draft.file.value.text, draft.before.value?.text]).toEqual(["one", "two"]);
  });
  it("begins empty where what was kept is no draft", async () => {
    const store = createMemoryStore();
    await store.setSetting("bench", { file: { name: 7, text: null }, before: "x" });
    const draft = await openDraft(store, slowChecker());
    expect([draft.file.value, draft.before.value, draft.verdict.value]).toEqual([{ name: "", text: "" }, null, null]);
  });
});
