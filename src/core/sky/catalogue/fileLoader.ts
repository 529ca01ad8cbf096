/** Loads files by name: a few at a time, the most urgent first, each once however many ask, dropped when nobody waits any more. */
import { DataFileError } from "#core/seams/errors.ts";

export type FetchFile = (name: string, signal: AbortSignal) => Promise<ArrayBuffer>;
/** What goes with a file on its way: it may be given up, and somebody waits more or less for it (0: most urgent). */
export type OnTheWay = { readonly signal: AbortSignal; readonly priority: number };
/** Takes the bytes of a file. Throws a DataFileError where they are no good. */
export type AcceptFile = (name: string, bytes: ArrayBuffer, onTheWay: OnTheWay) => Promise<void>;
export type FileLoader = {
  /**
   * Settles when all files did. Rejects with a DataFileError that names the first file that failed, or, at once, with the
   * signal's reason. A file that failed fails again until `forgetFailures`.
   */
  readonly load: (names: Iterable<string>, priority: number, signal: AbortSignal) => Promise<void>;
  readonly failures: () => readonly DataFileError[];
  readonly forgetFailures: () => void;
};

type Waiter = { readonly priority: number; readonly resolve: () => void; readonly reject: (reason: unknown) => void };
type Job = { readonly name: string; readonly waiters: Set<Waiter>; readonly abort: AbortController; started: boolean };

/** At most `atOnce` files under way, from the request until they are accepted. */
export function createFileLoader(fetchFile: FetchFile, accept: AcceptFile, atOnce: number): FileLoader {
  const jobs = new Map<string, Job>();
  const failed = new Map<string, DataFileError>();
  let underWay = 0;

  const pump = () => {
    while (underWay < atOnce) {
      const next = mostUrgent(jobs);
      if (!next) return;
      next.started = true;
      underWay += 1;
      void run(next);
    }
  };
  const run = async (job: Job) => {
    let error: unknown;
    try {
      const { signal } = job.abort;
      const bytes = await fetchFile(job.name, signal);
      if (!signal.aborted) await accept(job.name, bytes, { signal, priority: urgencyOf(job) });
    } catch (thrown) {
      error = asDataFileError(job.name, thrown);
    }
    underWay -= 1;
    settle(job, error);
    pump();
  };
  const settle = (job: Job, error: unknown) => {
    if (jobs.get(job.name) !== job) return;
    jobs.delete(job.name);
    if (error instanceof DataFileError) failed.set(job.name, error);
    for (const waiter of job.waiters) {
      if (error) waiter.reject(error);
      else waiter.resolve();
    }
  };
  const join = (name: string, waiter: Waiter): Job => {
    const job = jobs.get(name) ?? { name, waiters: new Set<Waiter>(), abort: new AbortController(), started: false };
    jobs.set(name, job);
    job.waiters.add(waiter);
    return job;
  };
  const leave = (job: Job, waiter: Waiter) => {
    job.waiters.delete(waiter);
    if (job.waiters.size > 0 || jobs.get(job.name) !== job) return;
    jobs.delete(job.name);
    job.abort.abort();
  };
  const load = (names: Iterable<string>, priority: number, signal: AbortSignal) =>
    new Promise<void>((resolve, reject) => {
      const joined: (() => void)[] = [];
      const outcomes = Array.from(names, (name) => {
        const failure = failed.get(name);
        if (failure) return Promise.reject(failure);
        return new Promise<void>((done, fail) => {
          const waiter = { priority, resolve: done, reject: fail };
          const job = join(name, waiter);
          joined.push(() => leave(job, waiter));
        });
      });
      const onAbort = () => {
        for (const part of joined) part();
        reject(signal.reason);
      };
      signal.addEventListener("abort", onAbort);
      void Promise.allSettled(outcomes).then((results) => {
        signal.removeEventListener("abort", onAbort);
        const failure = results.find((result) => result.status === "rejected");
        if (failure) reject(failure.reason);
        else resolve();
      });
      pump();
    });

  return {
    load: (names, priority, signal) => (signal.aborted ? Promise.reject(signal.reason) : load(names, priority, signal)),
    failures: () => [...failed.values()],
    forgetFailures: () => failed.clear(),
  };
}

/** The waiting job that somebody wants most; among equals the one that came first. */
function mostUrgent(jobs: ReadonlyMap<string, Job>): Job | undefined {
  let best: Job | undefined;
  for (const job of jobs.values()) if (!job.started && (!best || urgencyOf(job) < urgencyOf(best))) best = job;
  return best;
}

/** The smallest number that anybody gave who waits. */
function urgencyOf({ waiters }: Job): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { priority } of waiters) least = Math.min(least, priority);
  return least;
}

/** What was given up did not fail: it stays what it is, and may be asked for again. */
function asDataFileError(name: string, thrown: unknown): unknown {
  if (thrown instanceof DataFileError || (thrown instanceof Error && thrown.name === "AbortError")) return thrown;
  const what = thrown instanceof Error ? thrown.message : String(thrown);
  return new DataFileError(`${name} could not be loaded: ${what}`, "Check the connection and try again.");
}
