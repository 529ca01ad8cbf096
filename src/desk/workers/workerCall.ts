import type { Call, CallHow } from "#core/seams/index.ts";
import { cancelled, errorOf, workerStopped } from "./errors.ts";
import type { Reply, Request } from "./methods.ts";
import type { Channel } from "./serveCalls.ts";

type Waiting = {
  resolve(value: unknown): void;
  reject(error: Error): void;
  onProgress: CallHow["onProgress"];
  release(): void;
};
type Queued = { readonly request: Request; readonly priority: number; readonly transfer: readonly ArrayBuffer[] };

/** So many calls are with the worker at once; the rest wait here, the most urgent first, and can still be cancelled: nothing of theirs has been handed over. */
const WITH_WORKER = 2;

/**
 * Calls methods in a worker.
 * @param channel a Worker, or one end of a MessageChannel
 */
export function createWorkerCall(channel: Channel): Call {
  const waiting = new Map<number, Waiting>();
  const queue: Queued[] = [];
  const sent = new Set<number>();
  let nextId = 1;
  let stopped = false;

  const sendNext = () => {
    while (sent.size < WITH_WORKER && queue.length > 0) {
      const at = queue.reduce((best, one, i) => (one.priority < queue[best]!.priority ? i : best), 0);
      const [{ request, transfer }] = queue.splice(at, 1) as [Queued];
      sent.add(request.id);
      channel.postMessage(request, [...transfer]);
    }
  };
  const settle = (id: number, how: (one: Waiting) => void) => {
    const one = waiting.get(id);
    waiting.delete(id);
    sent.delete(id);
    one?.release();
    if (one) how(one);
    sendNext();
  };
  const cancel = (id: number) => {
    const at = queue.findIndex(({ request }) => request.id === id);
    if (at >= 0) queue.splice(at, 1);
    else channel.postMessage({ id, kind: "cancel" } satisfies Request);
    settle(id, ({ reject }) => reject(cancelled()));
  };
  /** A worker whose script did not come, or that fell over, answers nothing any more: better an error than a wait for ever. */
  const stop = () => {
    stopped = true;
    queue.length = 0;
    for (const id of [...waiting.keys()]) settle(id, ({ reject }) => reject(workerStopped()));
  };
  channel.addEventListener("error", stop);
  channel.addEventListener("message", ({ data }: MessageEvent<Reply>) => {
    if (data.kind === "progress") waiting.get(data.id)?.onProgress?.(data.done, data.of);
    else if (data.kind === "error") settle(data.id, ({ reject }) => reject(errorOf(data.error)));
    else settle(data.id, ({ resolve }) => resolve(data.value));
  });

  return <In, Out>(method: string, input: In, { signal, priority = 0, transfer = [], onProgress }: CallHow = {}) =>
    new Promise<Out>((resolve, reject) => {
      if (signal?.aborted) {
        reject(cancelled());
        return;
      }
      if (stopped) {
        reject(workerStopped());
        return;
      }
      const id = nextId++;
      const onAbort = () => cancel(id);
      signal?.addEventListener("abort", onAbort, { once: true });
      const release = () => signal?.removeEventListener("abort", onAbort);
      waiting.set(id, { resolve: resolve as (value: unknown) => void, reject, onProgress, release });
      queue.push({ request: { id, kind: "call", method, input }, priority, transfer });
      sendNext();
    });
}
