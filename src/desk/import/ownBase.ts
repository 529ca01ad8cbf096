/**
 * A catalogue of the reader's own, in a data base of its own: tile files under the number of their import, and which import
 * counts. Files and that pointer are written in one transaction, so that whatever ends it early leaves what was there.
 */
import type { DBSchema, IDBPDatabase } from "idb";
import { openDB } from "idb";
import type { Imported } from "#core/sky/import/types.ts";

const NAME = "faintward-catalogue";

/** What is told of a catalogue that was taken in. */
export interface OwnCatalogue extends Omit<Imported, "files" | "names"> {
  /** Absent in what was taken in before names were kept. */
  readonly names?: Imported["names"];
  /** Whose import it was; a random word. */
  readonly id: string;
  /** Counts imports; its files stand under it. */
  readonly generation: number;
  /** Of the file it came from. */
  readonly fileName: string;
  readonly rows: number;
  /** UTC, ms since 1970. */
  readonly takenAtMs: number;
}

interface Schema extends DBSchema {
  files: { key: [generation: number, name: string]; value: Uint8Array<ArrayBuffer> };
  current: { key: "catalogue"; value: OwnCatalogue };
}
export type OwnBase = IDBPDatabase<Schema>;

/** @param name of the data base; tests use their own. Rejects where the browser gives none */
export const openOwnBase = (name = NAME): Promise<OwnBase> =>
  openDB<Schema>(name, 1, {
    upgrade(base) {
      base.createObjectStore("files");
      base.createObjectStore("current");
    },
    blocking(_current, _blocked, event) {
      (event.target as IDBDatabase).close();
    },
  });

/** The catalogue that counts, or null. */
export const currentOf = async (base: OwnBase): Promise<OwnCatalogue | null> =>
  (await base.get("current", "catalogue")) ?? null;

/** A file of the catalogue; rejects where it is gone. */
export async function fileOf(base: OwnBase, generation: number, name: string): Promise<ArrayBuffer> {
  const bytes = await base.get("files", [generation, name]);
  if (!bytes) throw new Error("your catalogue has gone or was replaced");
  // Handed on to a worker: a copy of its own comes with each read.
  return bytes.buffer;
}

/**
 * Writes a catalogue beside the one that is there, and makes it the one that counts, in one transaction with strict
 * durability. Rejects with the browser's error (QuotaExceededError where there is no room): then nothing has changed.
 */
export async function keepOwn(base: OwnBase, told: Omit<OwnCatalogue, "generation">, files: Imported["files"]) {
  const change = base.transaction(["files", "current"], "readwrite", { durability: "strict" });
  const [filesThere, current] = [change.objectStore("files"), change.objectStore("current")];
  const last = await filesThere.openKeyCursor(null, "prev");
  const generation = Math.max(last?.key[0] ?? 0, (await current.get("catalogue"))?.generation ?? 0) + 1;
  const puts = [
    ...files.map(({ name, bytes }) => filesThere.put(bytes, [generation, name])),
    current.put({ ...told, generation }, "catalogue"),
  ];
  // Why the whole failed is told by the transaction alone: a single write only knows that it did.
  for (const put of puts) put.catch(() => undefined);
  await change.done;
}

/** Files of all imports but the one that counts go. */
export async function sweep(base: OwnBase): Promise<void> {
  const change = base.transaction(["files", "current"], "readwrite");
  const files = change.objectStore("files");
  const generation = (await change.objectStore("current").get("catalogue"))?.generation;
  if (generation === undefined) await files.clear();
  else {
    await files.delete(IDBKeyRange.upperBound([generation, ""]));
    // A list comes after every text.
    await files.delete(IDBKeyRange.lowerBound([generation, []]));
  }
  await change.done;
}

/**
 * Undoes the import `id` where it has become the one that counts: `before` counts again, as long as its files are there.
 */
export async function undoOwn(base: OwnBase, id: string, before: OwnCatalogue | null): Promise<void> {
  const change = base.transaction("current", "readwrite", { durability: "strict" });
  const now = await change.store.get("catalogue");
  if (now?.id === id) await (before ? change.store.put(before, "catalogue") : change.store.delete("catalogue"));
  await change.done;
  await sweep(base);
}

export async function removeOwn(base: OwnBase): Promise<void> {
  const change = base.transaction(["files", "current"], "readwrite", { durability: "strict" });
  await Promise.all([change.objectStore("files").clear(), change.objectStore("current").clear(), change.done]);
}
