/**
 * Attempts in IndexedDB. What is finished is only ever added, and written with strict durability; the running attempt has a
 * key of its own, so that an older tab cannot write over a newer. Data of a newer version of the program are read, not
 * written.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { FinishedAttempt, RunningAttempt, Store } from "../app/ports.ts";
import { createMemoryStore, latest, of } from "./memoryStore.ts";

const NAME = "faintward";
const VERSION = 1;

interface Schema extends DBSchema {
  running: { key: string; value: RunningAttempt };
  finished: { key: string; value: FinishedAttempt };
  settings: { key: string; value: unknown };
}
type Base = IDBPDatabase<Schema>;

const STORES = ["running", "finished", "settings"] as const;

const openOwn = (name: string): Promise<Base> =>
  openDB<Schema>(name, VERSION, {
    upgrade(base) {
      if (!base.objectStoreNames.contains("running")) base.createObjectStore("running", { keyPath: "id" });
      if (!base.objectStoreNames.contains("finished")) base.createObjectStore("finished", { keyPath: "id" });
      if (!base.objectStoreNames.contains("settings")) base.createObjectStore("settings");
    },
  });

/** Opens what is there, whatever its version; null where a store that this program reads is missing. */
const openNewer = async (name: string): Promise<Base | null> => {
  const base = await openDB<Schema>(name);
  return STORES.every((store) => base.objectStoreNames.contains(store)) ? base : null;
};

const isFull = (error: unknown) => error instanceof DOMException && error.name === "QuotaExceededError";

/**
 * Adds with strict durability what is not there yet. Two tabs that took up the same attempt end it each in its own way: the
 * second is kept beside the first.
 */
async function add(base: Base, attempt: FinishedAttempt): Promise<void> {
  const change = base.transaction("finished", "readwrite", { durability: "strict" });
  const adding = async () => {
    const there = await change.store.get(attempt.id);
    if (!there) await change.store.add(attempt);
    else if (there.recordText !== attempt.recordText)
      await change.store.put({ ...attempt, id: `${attempt.id}-${attempt.endedAtMs}` });
  };
  await Promise.all([adding(), change.done]);
}

/**
 * Reads and writes through one open data base. Where that fails the page's memory holds what was written, `trouble` says so,
 * and finished attempts are tried again with each later write.
 */
function storeOver(base: Base, isReadOnly: boolean): Store {
  const memory = createMemoryStore();
  const waiting = new Map<string, FinishedAttempt>();
  let trouble: Store["trouble"] = isReadOnly ? "newer" : "none";
  // Another tab raises the version, or the data are deleted: neither waits for this page.
  base.addEventListener("versionchange", ({ newVersion }) => {
    base.close();
    trouble = newVersion === null ? "unavailable" : "newer";
  });
  const failed = (error: unknown) => {
    if (trouble !== "newer") trouble = isFull(error) ? "full" : "unavailable";
  };
  const read = async <T>(reading: () => Promise<T>, otherwise: T): Promise<T> => {
    try {
      return await reading();
    } catch (error) {
      failed(error);
      return otherwise;
    }
  };
  const addWaiting = async () => {
    for (const attempt of waiting.values()) {
      await add(base, attempt);
      waiting.delete(attempt.id);
    }
  };
  /** Whether it was written, and all that waited with it. */
  const write = (act: () => Promise<unknown>): Promise<boolean> =>
    read(async () => {
      if (trouble === "newer") return false;
      await act();
      await addWaiting();
      trouble = "none";
      return true;
    }, false);
  return {
    get trouble() {
      return trouble;
    },
    async saveRunning(attempt) {
      if (!(await write(() => base.put("running", attempt)))) await memory.saveRunning(attempt);
    },
    async loadRunning(lessonId) {
      const [kept, ended] = await read(
        () => Promise.all([base.getAll("running"), base.getAllKeys("finished")]),
        [[], []],
      );
      const inMemory = await memory.loadRunning(lessonId);
      // A slow write, or another tab, may come after the end.
      const open = kept.filter(({ id }) => !ended.includes(id) && !waiting.has(id));
      return latest(of(lessonId, inMemory ? [...open, inMemory] : open));
    },
    async clearRunning(id) {
      await memory.clearRunning(id);
      await write(() => base.delete("running", id));
    },
    async addFinished(attempt) {
      waiting.set(attempt.id, attempt);
      await write(async () => undefined);
    },
    async listFinished() {
      const all = [...(await read(() => base.getAll("finished"), [])), ...waiting.values()];
      return all.sort((a, b) => a.endedAtMs - b.endedAtMs);
    },
    async getSetting(key) {
      return (await memory.getSetting(key)) ?? (await read(() => base.get("settings", key), undefined));
    },
    async setSetting(key, value) {
      await memory.setSetting(key, value);
      await write(() => base.put("settings", value, key));
    },
  };
}

/** A data base that another tab keeps waiting never answers: the page goes on without it. */
const OPENS_WITHIN_MS = 5000;
const inTime = (opening: Promise<Base>): Promise<Base> =>
  new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      reject(new Error("The data base does not answer."));
      // It must not stand in another tab's way when it does.
      opening.then(
        (base) => base.close(),
        () => undefined,
      );
    }, OPENS_WITHIN_MS);
    opening.finally(() => clearTimeout(late)).then(resolve, reject);
  });

/**
 * Opens the store; never rejects. Where the browser gives no data base, attempts last as long as the page.
 * @param name of the data base; tests use their own
 */
export async function openStore(name = NAME): Promise<Store> {
  try {
    return storeOver(await inTime(openOwn(name)), false);
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== "VersionError") return createMemoryStore("unavailable");
  }
  const newer = await openNewer(name).catch(() => null);
  return newer ? storeOver(newer, true) : createMemoryStore("newer");
}
