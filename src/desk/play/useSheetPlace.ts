/** The sheet's place, whose code comes once there is a page to be laid there: the sky is first. */
import { useEffect, useState } from "preact/hooks";
import type { PlayModel } from "./model.ts";
import type { SheetPlace } from "./SheetPlace.tsx";

/** Null until it is there. */
export function useSheetPlace(model: PlayModel): typeof SheetPlace | null {
  const [come, setCome] = useState<{ readonly Place: typeof SheetPlace } | null>(null);
  const ready = model.page.value !== null;
  useEffect(() => {
    if (!ready || come) return;
    let here = true;
    void import("./SheetPlace.tsx").then(({ SheetPlace: Place }) => here && setCome({ Place }));
    return () => {
      here = false;
    };
  }, [ready]);
  return come?.Place ?? null;
}
