/** Checks lessons in a thread of their own, which is ended when a text takes too long. */
import type { Finding } from "#core/lesson/findings.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { WorkerCall } from "../workers/createCalls.ts";
import type { Checked, CheckInput } from "../workers/thinkingMethods.ts";

export type Verdict =
  | { readonly kind: "checked"; readonly lesson: Lesson | null; readonly findings: readonly Finding[] }
  /** The text took too long, and its thread was ended. */
  | { readonly kind: "tooLong" }
  /** There is no thread, or it broke. */
  | { readonly kind: "failed"; readonly why: string };

export interface Checker {
  /** Never rejects. One text at a time: the next call waits for nothing but its own answer. */
  check(file: string, text: string): Promise<Verdict>;
  end(): void;
}

/**
 * Milliseconds: for the reading of a text; for the sky that it names once it is read (growing one takes slow machines long,
 * whatever the text); for a new thread until it answers (its code comes over the network).
 */
const LIMITS = { textMs: 500, skyMs: 10_000, threadMs: 20_000 };

const LATE = Symbol("late");

/** The answer, or LATE; `wish` may set a new limit that counts from then on. */
function within<T>(wish: (extend: (limitMs: number) => void) => Promise<T>, limitMs: number): Promise<T | typeof LATE> {
  return new Promise((resolve, reject) => {
    const wait = (ms: number) => setTimeout(() => resolve(LATE), ms);
    let timer = wait(limitMs);
    const extend = (ms: number) => {
      clearTimeout(timer);
      timer = wait(ms);
    };
    wish(extend)
      .then(resolve, reject)
      .finally(() => clearTimeout(timer));
  });
}

interface Thread extends WorkerCall {
  /** The parser has come: from here on only the text's own cost counts. */
  readonly ready: Promise<unknown>;
}

const ask = ({ call }: WorkerCall, input: CheckInput, onRead?: () => void) =>
  call<CheckInput, Checked>("checkLesson", input, { onProgress: onRead });

/**
 * Opens a thread at once, and a new one whenever it had to end one.
 * @param open opens the thinking thread
 */
export function createChecker(open: () => WorkerCall, limits = LIMITS): Checker {
  const start = (): Thread => {
    const worker = open();
    const ready = within(() => ask(worker, { file: "", text: "" }), limits.threadMs);
    // Whoever checks next hears of a failure; until then nobody listens.
    ready.catch(() => undefined);
    return { ...worker, ready };
  };
  let thread: Thread | null = start();
  const drop = () => {
    thread?.end();
    thread = null;
  };
  return {
    async check(file, text) {
      const own = thread ?? start();
      thread = own;
      try {
        if ((await own.ready) === LATE) throw new Error("the checking thread does not answer");
        const answer = await within((extend) => ask(own, { file, text }, () => extend(limits.skyMs)), limits.textMs);
        if (answer !== LATE) return { kind: "checked", lesson: answer.lesson ?? null, findings: answer.findings };
        // A checker that has been ended meanwhile opens no new thread.
        if (thread === own) {
          drop();
          thread = start();
        }
        return { kind: "tooLong" };
      } catch (error) {
        if (thread === own) drop();
        return { kind: "failed", why: error instanceof Error ? error.message : String(error) };
      }
    },
    end: drop,
  };
}
