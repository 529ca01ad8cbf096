/** Opens the two workers; each is one thread and one call. */
import type { Call } from "#core/seams/index.ts";
import { createWorkerCall } from "./workerCall.ts";

export interface WorkerCall {
  readonly call: Call;
  /** Ends the thread at once, whatever it is doing; no call answers any more. */
  end(): void;
}

const callOf = (worker: Worker): WorkerCall => ({ call: createWorkerCall(worker), end: () => worker.terminate() });

/** Tiles: generating, decoding. */
export const createSkyCall = (): WorkerCall =>
  callOf(new Worker(new URL("./sky.worker.ts", import.meta.url), { type: "module", name: "sky" }));

/** Compiling, scoring, checking lessons. */
export const createThinkingCall = (): WorkerCall =>
  callOf(new Worker(new URL("./thinking.worker.ts", import.meta.url), { type: "module", name: "thinking" }));
