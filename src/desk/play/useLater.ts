/** A part of the page whose code comes once the sky is there: the sky is first. */
import { useEffect, useState } from "preact/hooks";

/**
 * Null until it is there.
 * @param ready it may come now
 */
export function useLater<Part>(ready: boolean, load: () => Promise<Part>): Part | null {
  const [come, setCome] = useState<{ readonly part: Part } | null>(null);
  useEffect(() => {
    if (!ready || come) return;
    let here = true;
    void load().then((part) => here && setCome({ part }));
    return () => {
      here = false;
    };
  }, [ready]);
  return come?.part ?? null;
}
