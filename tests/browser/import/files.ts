/** Catalogues of a reader's own, as files are dropped. */
import type { JSHandle, Page } from "@playwright/test";

/** Places by the golden section (textbook). @param mag V of the star numbered i */
function places(rows: number, row: (raDeg: string, decDeg: string, i: number) => string): string {
  const lines = Array.from({ length: rows }, (_none, i) => {
    const decDeg = (Math.asin((2 * i + 1) / rows - 1) * 180) / Math.PI;
    return row(((i * 222.492) % 360).toFixed(5), decDeg.toFixed(5), i);
  });
  return `RA,Dec,Vmag,B-V\n${lines.join("\n")}\n`;
}

/** Every hundredth row is spoilt, in one of four ways. */
export function spoiltCsv(rows: number): string {
  const spoilt = ["nonsense,10,5,", "10,95,5,", "10,20,,", "10,20,5"];
  return places(rows, (raDeg, decDeg, i) =>
    i % 100 === 99 ? spoilt[((i - 99) / 100) % 4]! : `${raDeg},${decDeg},${(2 + (i % 1000) / 100).toFixed(2)},0.65`,
  );
}

/** So many stars, all as bright, evenly over the whole sky. */
export const evenCsv = (stars: number, magV: number): string =>
  places(stars, (raDeg, decDeg) => `${raDeg},${decDeg},${magV},0.65`);

/** Cut off in the middle of a row. */
export const BROKEN_VOTABLE = `<?xml version="1.0"?>
<VOTABLE version="1.4"><RESOURCE><TABLE>
<FIELD name="ra" unit="deg" datatype="double"/><FIELD name="dec" unit="deg" datatype="double"/>
<FIELD name="vmag" unit="mag" datatype="float"/>
<DATA><TABLEDATA><TR><TD>10</TD><TD>20</TD><TD>3</TD></TR><TR><TD>11</TD>`;

/** A file in the page's hand; `times`: so often one after the other, but for the first line. */
export const handOf = (page: Page, name: string, text: string, times = 1): Promise<JSHandle<DataTransfer>> =>
  page.evaluateHandle(
    ({ name: called, text: given, times: often }) => {
      const rows = given.slice(given.indexOf("\n") + 1);
      const hand = new DataTransfer();
      hand.items.add(new File([given, ...Array<string>(often - 1).fill(rows)], called));
      return hand;
    },
    { name, text, times },
  );

export async function drop(page: Page, dataTransfer: JSHandle<DataTransfer>): Promise<void> {
  await page.dispatchEvent("main", "dragover", { dataTransfer });
  await page.dispatchEvent("main", "drop", { dataTransfer });
}

/** How many tile files the page keeps, and of which catalogue it says that it counts. */
export const keptTiles = (page: Page): Promise<{ files: number; of: string | null }> =>
  page.evaluate(
    () =>
      new Promise<{ files: number; of: string | null }>((resolve, reject) => {
        const opening = indexedDB.open("faintward-catalogue");
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const reading = opening.result.transaction(["files", "current"]);
          const files = reading.objectStore("files").count();
          const current = reading.objectStore("current").get("catalogue");
          reading.oncomplete = () => {
            opening.result.close();
            resolve({ files: files.result, of: current.result?.fileName ?? null });
          };
        };
      }),
  );
