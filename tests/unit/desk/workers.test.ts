import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import type { Call } from "#core/seams/index.ts";
import { createInlineCall } from "../../../src/desk/workers/inlineCall.ts";
import type { Methods } from "../../../src/desk/workers/methods.ts";
import { serveCalls } from "../../../src/desk/workers/serveCalls.ts";
import { skyMethods } from "../../../src/desk/workers/skyMethods.ts";
import { thinkingMethods } from "../../../src/desk/workers/thinkingMethods.ts";
import { createWorkerCall } from "../../../src/desk/workers/workerCall.ts";
import { outcomeOf, type WorkerCase, workerCases } from "./workerCases.ts";

const at = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));
const METHODS = { sky: skyMethods, thinking: thinkingMethods } satisfies Record<string, Methods>;
const ports: MessagePort[] = [];

/** The worker's end of a real message channel: structured clone and all, without a second thread. */
function overChannel(methods: Methods): Call {
  const { port1, port2 } = new MessageChannel();
  serveCalls(port2 as never, methods);
  const call = createWorkerCall(port1 as never);
  port1.start();
  port2.start();
  ports.push(port1);
  return call;
}

let cases: WorkerCase[];
beforeAll(async () => {
  cases = await workerCases({
    lesson: (name) => readFile(at(`lessons/${name}`), "utf8"),
    sky: async (name) => {
      const { buffer, byteOffset, byteLength } = await readFile(at(`assets/sky/${name}`));
      return (buffer as ArrayBuffer).slice(byteOffset, byteOffset + byteLength);
    },
  });
});
afterAll(() => {
  for (const port of ports) port.close();
});

describe.each(["sky", "thinking"] as const)("the %s worker", (worker) => {
  const own = () => cases.filter((one) => one.worker === worker);
  it("has every method tried, with sense and without", () => {
    const methods = Object.keys(METHODS[worker]).sort();
    expect([...new Set(own().map(({ method }) => method))].sort()).toEqual(methods);
    for (const method of methods) expect(own().filter((one) => one.method === method).length).toBeGreaterThan(1);
  });
  it("answers through a channel as it does inline, errors included", async () => {
    const [inline, channel] = [createInlineCall(METHODS[worker]), overChannel(METHODS[worker])];
    const failed: string[] = [];
    for (const one of own()) {
      const answer = await outcomeOf(inline, one);
      expect(await outcomeOf(channel, one), one.method).toBe(answer);
      if (answer.startsWith('{"failed"')) failed.push(one.method);
    }
    expect(failed.length).toBeGreaterThan(0);
  });
  it("gives up a call when told to, and answers the next", async () => {
    const call = overChannel(METHODS[worker]);
    for (const { method, input } of own().filter((_, i) => i % 2 === 0)) {
      const abort = new AbortController();
      const given = call(method, input, { signal: abort.signal });
      abort.abort();
      await expect(given).rejects.toMatchObject({ name: "AbortError" });
    }
    const [first] = own();
    expect(await outcomeOf(call, first!)).toBe(await outcomeOf(createInlineCall(METHODS[worker]), first!));
  });
});
