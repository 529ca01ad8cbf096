import { afterEach, describe, expect, it, vi } from "vitest";
import type { Call, CallHow } from "#core/seams/index.ts";
import { createChecker } from "../../../src/desk/bench/checker.ts";
import { SOUND } from "../lesson/sound.ts";

const FINDING = { file: "a", line: 1, column: 1, severity: "error", code: "FW006", message: "broken", hint: "mend" };
const never = () => new Promise<never>(() => undefined);

/** Threads of which each answers as told; they count how often they are opened and ended. */
function threads(answer: (text: string, thread: number) => Promise<unknown>) {
  const counted = { opened: 0, ended: 0 };
  const open = () => {
    const thread = ++counted.opened;
    const call = ((_method: string, { text }: { text: string }) => answer(text, thread)) as Call;
    return {
      call,
      end: () => {
        counted.ended++;
      },
    };
  };
  return { counted, open };
}
const quick = { textMs: 30, skyMs: 100, threadMs: 200 };

afterEach(() => vi.useRealTimers());

describe("the checker", () => {
  it("gives what the thread found", async () => {
    const { open, counted } = threads(async () => ({ findings: [FINDING] }));
    const checker = createChecker(open, quick);
    expect(await checker.check("a", "x")).toEqual({ kind: "checked", lesson: null, findings: [FINDING] });
    expect(counted).toEqual({ opened: 1, ended: 0 });
    checker.end();
    expect(counted.ended).toBe(1);
  });
  it("ends a thread whose text takes too long, says so, and has a new one for the next text", async () => {
    const { open, counted } = threads(async (text) => (text === SOUND ? never() : { findings: [] }));
    const checker = createChecker(open, quick);
    expect(await checker.check("a", SOUND)).toEqual({ kind: "tooLong" });
    expect(counted).toEqual({ opened: 2, ended: 1 });
    expect(await checker.check("a", "mended")).toMatchObject({ kind: "checked", findings: [] });
    expect(counted).toEqual({ opened: 2, ended: 1 });
  });
  it("ends it after 500 ms and no earlier; the coming of the thread does not count", async () => {
    vi.useFakeTimers();
    const comes = 3000;
    const { open } = threads((text) => (text === "" ? new Promise((done) => setTimeout(done, comes)) : never()));
    let verdict: unknown = null;
    void createChecker(open)
      .check("a", "dear")
      .then((it) => {
        verdict = it;
      });
    await vi.advanceTimersByTimeAsync(comes + 495);
    expect(verdict).toBeNull();
    await vi.advanceTimersByTimeAsync(10);
    expect(verdict).toEqual({ kind: "tooLong" });
  });
  it("gives a text that has been read more time for its sky, though not for ever", async () => {
    const reads = (skyMs: number) => () => {
      const call = async (_method: string, { text }: { text: string }, how?: CallHow): Promise<unknown> => {
        if (text !== "") {
          how?.onProgress?.(1, 2);
          await new Promise((done) => setTimeout(done, skyMs));
        }
        return { findings: [] };
      };
      return { call: call as Call, end: () => undefined };
    };
    expect(await createChecker(reads(60), quick).check("a", "x")).toMatchObject({ kind: "checked" });
    expect(await createChecker(reads(300), quick).check("a", "x")).toEqual({ kind: "tooLong" });
  });
  it("says why where no thread comes, and tries again with the next text", async () => {
    const { open, counted } = threads(async (_text, thread) => {
      if (thread === 1) return never();
      return { findings: [] };
    });
    const checker = createChecker(open, quick);
    expect(await checker.check("a", "x")).toMatchObject({
      kind: "failed",
      why: expect.stringMatching(/does not answer/),
    });
    expect(await checker.check("a", "x")).toMatchObject({ kind: "checked" });
    expect(counted).toEqual({ opened: 2, ended: 1 });
  });
  it("opens no thread once it has been ended", async () => {
    const { open, counted } = threads(async (text) => (text === "" ? { findings: [] } : never()));
    const checker = createChecker(open, quick);
    const running = checker.check("a", "x");
    checker.end();
    await running;
    expect(counted).toEqual({ opened: 1, ended: 1 });
  });
  it("says why where the thread breaks", async () => {
    const { open } = threads(async (text) => {
      if (text !== "") throw new Error("out of memory");
      return { findings: [] };
    });
    expect(await createChecker(open, quick).check("a", "x")).toEqual({ kind: "failed", why: "out of memory" });
  });
});
