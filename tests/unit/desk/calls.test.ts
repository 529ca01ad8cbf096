import { describe, expect, it } from "vitest";
import { DataFileError } from "#core/seams/errors.ts";
import type { Call } from "#core/seams/index.ts";
import { createInlineCall } from "../../../src/desk/workers/inlineCall.ts";
import type { Methods } from "../../../src/desk/workers/methods.ts";
import { serveCalls } from "../../../src/desk/workers/serveCalls.ts";
import { createWorkerCall } from "../../../src/desk/workers/workerCall.ts";

const order: number[] = [];
const methods: Methods = {
  add: ({ a, b }: { a: number; b: number }) => a + b,
  block: (count: number) => ({ dirs: new Float32Array(count).fill(0.5), count }),
  sum: ({ kept, given }: { kept: Uint8Array; given: Uint8Array }) =>
    [...kept, ...given].reduce((sum, one) => sum + one),
  fail: () => {
    throw new DataFileError("tile 7 is damaged", "load the page again");
  },
  steps: async (count: number, { progress, signal }) => {
    for (let i = 1; i <= count && !signal.aborted; i++) {
      progress(i, count);
      await new Promise((resolve) => setTimeout(resolve, 1));
    }
    return count;
  },
  note: async (value: number) => {
    order.push(value);
    await new Promise((resolve) => setTimeout(resolve, 5));
  },
};

/** A worker's call over a real message channel: structured clone and all, without a second thread. */
function overChannel(): { call: Call; close(): void } {
  const { port1, port2 } = new MessageChannel();
  serveCalls(port2 as never, methods);
  const call = createWorkerCall(port1 as never);
  port1.start();
  port2.start();
  return { call, close: () => port1.close() };
}

const both: [string, () => { call: Call; close(): void }][] = [
  ["inline", () => ({ call: createInlineCall(methods), close: () => undefined })],
  ["through a channel", overChannel],
];

describe.each(both)("a call %s", (_where, open) => {
  const withCall = async (act: (call: Call) => Promise<void>) => {
    const { call, close } = open();
    try {
      await act(call);
    } finally {
      close();
    }
  };
  it("gives the result", () => withCall(async (call) => expect(await call("add", { a: 2, b: 3 })).toBe(5)));
  it("hands typed arrays over", () =>
    withCall(async (call) => {
      const { dirs, count } = await call<number, { dirs: Float32Array; count: number }>("block", 4);
      expect([count, ...dirs]).toEqual([4, 0.5, 0.5, 0.5, 0.5]);
    }));
  it("throws the error with its kind, code and hint", () =>
    withCall(async (call) => {
      const error = await call("fail", null).catch((one: unknown) => one);
      expect(error).toBeInstanceOf(DataFileError);
      expect(error).toMatchObject({ code: "DATA_FILE", hint: "load the page again", message: "tile 7 is damaged" });
    }));
  it("says which methods there are where there is none of the name", () =>
    withCall(async (call) => {
      await expect(call("toString", null)).rejects.toThrow(/NO_SUCH_METHOD: toString; there are add, block/);
    }));
  it("tells its progress", () =>
    withCall(async (call) => {
      const seen: number[] = [];
      await call("steps", 3, { onProgress: (done) => seen.push(done) });
      expect(seen).toEqual([1, 2, 3]);
    }));
  it("is cancelled by its signal, before or while it runs", () =>
    withCall(async (call) => {
      await expect(call("add", { a: 1, b: 1 }, { signal: AbortSignal.abort() })).rejects.toMatchObject({
        name: "AbortError",
      });
      const abort = new AbortController();
      const slow = call("steps", 200, { signal: abort.signal });
      setTimeout(() => abort.abort(), 10);
      await expect(slow).rejects.toMatchObject({ name: "AbortError" });
    }));
});

it("the most urgent of the waiting calls goes first", async () => {
  const { call, close } = overChannel();
  await Promise.all([1, 2, 3, 9].map((value) => call("note", value, { priority: -value })));
  close();
  expect(order).toEqual([1, 2, 9, 3]);
});

it("moves what it may keep, and copies the rest", async () => {
  const { call, close } = overChannel();
  const [kept, given] = [new Uint8Array([1, 2]), new Uint8Array([3, 4])];
  expect(await call("sum", { kept, given }, { transfer: [given.buffer] })).toBe(10);
  expect([kept.byteLength, given.byteLength]).toEqual([2, 0]);
  close();
});

it("a call that is cancelled while it waits hands nothing over", async () => {
  const { call, close } = overChannel();
  const busy = [1, 2].map((value) => call("note", value));
  const given = new Uint8Array([3, 4]);
  const abort = new AbortController();
  const waits = call("sum", { kept: given, given }, { transfer: [given.buffer], signal: abort.signal });
  abort.abort();
  await expect(waits).rejects.toMatchObject({ name: "AbortError" });
  await Promise.all(busy);
  expect(given.byteLength).toBe(2);
  close();
});

it("a worker that stops fails what waits for it, and what is asked later", async () => {
  let stop: () => void = () => undefined;
  const call = createWorkerCall({
    postMessage: () => undefined,
    addEventListener: (type: "message" | "error", listener: unknown) => {
      if (type === "error") stop = listener as () => void;
    },
  });
  const asked = [1, 2, 3].map((value) => call("note", value));
  stop();
  for (const one of asked) await expect(one).rejects.toThrow("worker stopped");
  await expect(call("note", 4)).rejects.toThrow("worker stopped");
});
