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
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });

/** Opens what is there, whatever its version; null where a store that this program reads is missing. */
const openNewer = async (name: string): Promise<Base | null> => {
  const base = await openDB<Schema>(name);
  return STORES.every((store) => base.objectStoreNames.contains(store)) ? base : null;
};

const isFull = (error: unknown) => error instanceof DOMException && error.name === "QuotaExceededError";

/** Reads and writes through one open data base; a failed write falls back to the page's memory and says so. */
function storeOver(base: Base, readOnly: boolean): Store {
  const memory = createMemoryStore();
  let trouble: Store["trouble"] = readOnly ? "newer" : "none";
  const write = async (act: () => Promise<unknown>, instead: () => Promise<void>) => {
    if (readOnly) return instead();
    try {
      await act();
      if (trouble === "full") trouble = "none";
    } catch (error) {
      trouble = isFull(error) ? "full" : "unavailable";
      await instead();
    }
  };
  const strictly = async (attempt: FinishedAttempt) => {
    const change = base.transaction("finished", "readwrite", { durability: "strict" });
    await Promise.all([change.store.add(attempt), change.done]);
  };
  return {
    get trouble() {
      return trouble;
    },
    saveRunning: (attempt) =>
      write(
        () => base.put("running", attempt),
        () => memory.saveRunning(attempt),
      ),
    async loadRunning(lessonId) {
      const [kept, inMemory] = await Promise.all([base.getAll("running"), memory.loadRunning(lessonId)]);
      return latest(of(lessonId, inMemory ? [...kept, inMemory] : kept));
    },
    async clearRunning(id) {
      await memory.clearRunning(id);
      await write(
        () => base.delete("running", id),
        async () => undefined,
      );
    },
    async addFinished(attempt) {
      if (await base.get("finished", attempt.id)) return;
      await write(
        () => strictly(attempt),
        () => memory.addFinished(attempt),
      );
    },
    async listFinished() {
      const all = [...(await base.getAll("finished")), ...(await memory.listFinished())];
      return all.sort((a, b) => a.endedAtMs - b.endedAtMs);
    },
    async getSetting(key) {
      return (await memory.getSetting(key)) ?? (await base.get("settings", key));
    },
    setSetting: (key, value) =>
      write(
        () => base.put("settings", value, key),
        () => memory.setSetting(key, value),
      ),
  };
}

/**
 * Opens the store; never rejects. Where the browser gives no data base, attempts last as long as the page.
 * @param name of the data base; tests use their own
 */
export async function openStore(name = NAME): Promise<Store> {
  try {
    return storeOver(await openOwn(name), false);
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== "VersionError") return createMemoryStore("unavailable");
  }
  const newer = await openNewer(name).catch(() => null);
  return newer ? storeOver(newer, true) : createMemoryStore("newer");
}
