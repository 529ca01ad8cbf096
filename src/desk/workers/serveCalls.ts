import { plainErrorOf } from "./errors.ts";
import { methodOf } from "./inlineCall.ts";
import type { Methods, Reply, Request } from "./methods.ts";

/** The part of a worker's global scope, or of a port, that is used here. */
export interface Channel {
  postMessage(message: unknown, transfer?: Transferable[]): void;
  addEventListener(type: "message", listener: (event: MessageEvent) => void): void;
  addEventListener(type: "error", listener: () => void): void;
}

/** Buffers of a result's typed arrays, to be handed over instead of copied. */
const buffersOf = (value: unknown): ArrayBuffer[] => {
  const found = new Set<ArrayBuffer>();
  const visit = (one: unknown, depth: number) => {
    if (ArrayBuffer.isView(one) && one.buffer instanceof ArrayBuffer) found.add(one.buffer);
    else if (one && typeof one === "object" && depth < 3) for (const part of Object.values(one)) visit(part, depth + 1);
  };
  visit(value, 0);
  return [...found];
};

/** Answers calls that come through a channel; the worker's side of `createWorkerCall`. */
export function serveCalls(channel: Channel, methods: Methods): void {
  const running = new Map<number, AbortController>();
  const reply = (message: Reply, transfer: Transferable[] = []) => channel.postMessage(message, transfer);
  const answer = async ({ id, method, input }: Request & { kind: "call" }) => {
    const abort = new AbortController();
    running.set(id, abort);
    const progress = (done: number, of: number) => reply({ id, kind: "progress", done, of });
    try {
      const value = await methodOf(methods, method)(input as never, { progress, signal: abort.signal });
      if (!abort.signal.aborted) reply({ id, kind: "result", value }, buffersOf(value));
    } catch (error) {
      if (!abort.signal.aborted) reply({ id, kind: "error", error: plainErrorOf(error) });
    } finally {
      running.delete(id);
    }
  };
  channel.addEventListener("message", ({ data }: MessageEvent<Request>) => {
    if (data.kind === "cancel") running.get(data.id)?.abort();
    else void answer(data);
  });
}
