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

/** What the data base holds now. */
export const readBase = (page: Page): Promise<Kept> =>
  page.evaluate(
    () =>
      new Promise<Kept>((resolve, reject) => {
        const opening = indexedDB.open("faintward");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const base = opening.result;
          const reading = base.transaction(["running", "finished"]);
          const [running, finished] = ["running", "finished"].map((name) => reading.objectStore(name).getAll());
          reading.oncomplete = () => {
            base.close();
            resolve({ running: running!.result, finished: finished!.result });
          };
        };
      }),
  );

/** A setting as the data base holds it now. */
export const readSetting = (page: Page, key: string): Promise<unknown> =>
  page.evaluate(
    (wanted) =>
      new Promise<unknown>((resolve, reject) => {
        const opening = indexedDB.open("faintward");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const base = opening.result;
          const reading = base.transaction("settings").objectStore("settings").get(wanted);
          reading.onerror = () => reject(reading.error);
          reading.onsuccess = () => {
            base.close();
            resolve(reading.result);
          };
        };
      }),
    key,
  );
