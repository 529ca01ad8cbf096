/** The page's data base, read and written from beside the program. */
import type { Page } from "@playwright/test";
import type { FinishedAttempt, RunningAttempt } from "../../../src/desk/app/ports.ts";

export interface Kept {
  readonly running: RunningAttempt[];
  readonly finished: FinishedAttempt[];
}

type Filled = Partial<Kept> & { readonly settings?: Readonly<Record<string, unknown>> };

/** Makes the data base as a version of the program would have left it. The page must be on the program's origin. */
export async function fillBase(page: Page, kept: Filled, version = 1): Promise<void> {
  await page.evaluate(
    ({ kept: given, version: wanted }) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("faintward", wanted);
        opening.onupgradeneeded = () => {
          for (const name of ["running", "finished"]) opening.result.createObjectStore(name, { keyPath: "id" });
          opening.result.createObjectStore("settings");
        };
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const change = opening.result.transaction(["running", "finished", "settings"], "readwrite");
          for (const [key, value] of Object.entries(given.settings ?? {}))
            change.objectStore("settings").put(value, key);
          for (const attempt of given.running ?? []) change.objectStore("running").put(attempt);
          for (const attempt of given.finished ?? []) change.objectStore("finished").put(attempt);
          change.oncomplete = () => {
            opening.result.close();
            resolve();
          };
        };
      }),
    { kept, version },
  );
}

/** A newer version of the program opens the data base in another tab; rejects where a page stands in its way. */
export const raiseVersion = (page: Page, version: number): Promise<void> =>
  page.evaluate(
    (wanted) =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open("faintward", wanted);
        opening.onblocked = () => reject(new Error("blocked"));
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
      }),
    version,
  );

/** What the data base holds now. */
export const readBase = async (page: Page): Promise<Kept> => {
  const [running, finished] = await read(page, ["running", "finished"]);
  return { running, finished } as Kept;
};

/** A setting as the data base holds it now. */
export const readSetting = async (page: Page, key: string): Promise<unknown> =>
  (await read(page, ["settings"], key))[0];

/** What each store holds, in one transaction: all of it, or what stands under the key. */
const read = (page: Page, stores: readonly string[], key?: string): Promise<unknown[]> =>
  page.evaluate(
    ({ names, wanted }) =>
      new Promise<unknown[]>((resolve, reject) => {
        const opening = indexedDB.open("faintward");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result.transaction([...names]);
          const answers = names.map((name) => {
            const store = reading.objectStore(name);
            return wanted === undefined ? store.getAll() : store.get(wanted);
          });
          reading.onabort = () => reject(reading.error);
          reading.oncomplete = () => {
            opening.result.close();
            resolve(answers.map(({ result }) => result));
          };
        };
      }),
    { names: stores, wanted: key },
  );
