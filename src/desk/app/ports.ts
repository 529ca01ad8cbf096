/** What the page asks of its surroundings: kept attempts, sounds. Screens know these and no library behind them. */
import type { Report } from "#core/seams/index.ts";

/** A finished attempt as the logbook lists it. `recordText` is the encoded record; stored points are never read back as truth. */
export interface FinishedAttempt {
  readonly id: string;
  readonly lessonId: string;
  /** UTC, ms since 1970. */
  readonly endedAtMs: number;
  readonly word: Report["word"];
  readonly points: number | null;
  readonly stars: 0 | 1 | 2 | 3;
  readonly recordText: string;
}
/** The attempt under way, as far as it was written. */
export interface RunningAttempt {
  /** One an attempt: two tabs never write over each other. */
  readonly id: string;
  readonly lessonId: string;
  readonly seed: number;
  readonly savedAtMs: number;
  readonly recordText: string;
}
export interface Store {
  /** Written every few seconds and at each event worth keeping; never rejects: where nothing can be kept, `trouble` says why. */
  saveRunning(attempt: RunningAttempt): Promise<void>;
  /** The latest attempt that was not ended; of one lesson, where it is named. */
  loadRunning(lessonId?: string): Promise<RunningAttempt | null>;
  clearRunning(id: string): Promise<void>;
  /** Append-only, with strict durability. */
  addFinished(attempt: FinishedAttempt): Promise<void>;
  listFinished(): Promise<readonly FinishedAttempt[]>;
  getSetting(key: string): Promise<unknown>;
  setSetting(key: string, value: unknown): Promise<void>;
  /** Why nothing can be kept (no storage, full, a newer version's data), or null. */
  readonly trouble: "none" | "unavailable" | "full" | "newer";
}
export type SoundName = "waymark" | "change" | "sheet" | "flip" | "pencil" | "tick" | "right";
export interface Sound {
  play(name: SoundName): void;
  /** The tube's rub: 0 at rest, 1 at a field a second. */
  moving(fieldsPerS: number): void;
  setOn(on: boolean): void;
  /** 0 .. 1. */
  setVolume(volume: number): void;
  /** Night's wind, on the play screen alone. */
  setNight(on: boolean): void;
}
