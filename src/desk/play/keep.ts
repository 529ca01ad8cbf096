/** Keeps the running attempt: at every event, and every two seconds while the tube moves. */
import { encodeRecord, record } from "#core/session/record.ts";
import type { Store } from "../app/ports.ts";
import type { Attempt } from "./attempt.ts";

const EVERY_MS = 2000;

export interface Keeper {
  /** Something was recorded or moved; `now` writes at once. */
  changed(now?: boolean): void;
  /** Nothing is written later; what waits is written now where `keep`. */
  stop(keep: boolean): void;
}

export function createKeeper(store: Store, lessonId: string, attempt: Attempt): Keeper {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let writing: Promise<void> = Promise.resolve();
  const write = () => {
    clearTimeout(timer);
    timer = undefined;
    const recordText = encodeRecord(record(attempt.session));
    const running = { id: attempt.id, lessonId, seed: attempt.seed, savedAtMs: Date.now(), recordText };
    writing = writing.then(() => store.saveRunning(running));
  };
  return {
    changed(now = false) {
      if (now) write();
      else timer ??= setTimeout(write, EVERY_MS);
    },
    stop(keep) {
      if (timer !== undefined && keep) write();
      clearTimeout(timer);
      timer = undefined;
    },
  };
}
