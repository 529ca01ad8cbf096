/** A store that lasts as long as the page: where the browser keeps nothing, and for tests. */
import type { FinishedAttempt, RunningAttempt, Store } from "../app/ports.ts";

export function createMemoryStore(trouble: Store["trouble"] = "none"): Store {
  const running = new Map<string, RunningAttempt>();
  const finished: FinishedAttempt[] = [];
  const settings = new Map<string, unknown>();
  return {
    trouble,
    async saveRunning(attempt) {
      running.set(attempt.id, attempt);
    },
    async loadRunning(lessonId) {
      return latest(of(lessonId, [...running.values()]));
    },
    async clearRunning(id) {
      running.delete(id);
    },
    async addFinished(attempt) {
      if (!finished.some(({ id }) => id === attempt.id)) finished.push(attempt);
    },
    async listFinished() {
      return [...finished];
    },
    async getSetting(key) {
      return settings.get(key);
    },
    async setSetting(key, value) {
      settings.set(key, value);
    },
  };
}

/** Attempts of one lesson, or all where none is named. */
export const of = (lessonId: string | undefined, attempts: readonly RunningAttempt[]): readonly RunningAttempt[] =>
  lessonId === undefined ? attempts : attempts.filter((one) => one.lessonId === lessonId);

/** The attempt that was saved last. */
export const latest = (attempts: readonly RunningAttempt[]): RunningAttempt | null =>
  attempts.reduce<RunningAttempt | null>((best, one) => (!best || one.savedAtMs > best.savedAtMs ? one : best), null);
