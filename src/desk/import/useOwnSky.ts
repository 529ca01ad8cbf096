import { useEffect, useState } from "preact/hooks";
import type { OpenSky } from "../play/skies.ts";
import { ownInUse } from "./inUse.ts";
import { openOwnBase } from "./ownBase.ts";
import { openOwnSky } from "./ownSky.ts";

/** The sky with the reader's own stars, as long as the screen stands; null until it is there. Where the catalogue has gone, it is in use no more. */
export function useOwnSky(): OpenSky | null {
  const [sky, setSky] = useState<OpenSky | null>(null);
  useEffect(() => {
    let close: () => void = () => undefined;
    let isHere = true;
    const open = async () => {
      const base = await openOwnBase();
      close = () => base.close();
      const opened = await openOwnSky(base);
      if (!isHere) return close();
      if (opened) setSky(opened);
      else ownInUse.value = false;
    };
    void open().catch(() => {
      ownInUse.value = false;
    });
    return () => {
      isHere = false;
      close();
    };
  }, []);
  return sky;
}
