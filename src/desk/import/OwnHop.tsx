/** A catalogue lesson hopped among the reader's own stars. Nothing of it is kept: it says nothing about the catalogue sky. */
import { useEffect, useState } from "preact/hooks";
import type { Lesson } from "#core/lesson/types.ts";
import type { Sound } from "../app/ports.ts";
import { Trial } from "../bench/Trial.tsx";
import { type OpenSky, openSkyOf } from "../play/skies.ts";
import { ownInUse } from "./inUse.ts";
import { openOwnBase } from "./ownBase.ts";
import { openOwnSky } from "./ownSky.ts";

interface Props {
  readonly lesson: Lesson;
  readonly sound: Sound;
  readonly onBack: () => void;
}

/** Where the catalogue has gone, the lesson's own sky is used again. */
export function OwnHop({ lesson, sound, onBack }: Props) {
  const [sky, setSky] = useState<OpenSky | null>(null);
  useEffect(() => {
    let close: () => void = () => undefined;
    let isHere = true;
    const open = async () => {
      const base = await openOwnBase();
      close = () => base.close();
      const opened = await openOwnSky(base);
      if (!isHere) return close();
      if (opened) setSky(openSkyOf(lesson, opened));
      else ownInUse.value = false;
    };
    void open().catch(() => {
      ownInUse.value = false;
    });
    return () => {
      isHere = false;
      close();
    };
  }, [lesson]);
  if (!sky) return <main class="waiting" aria-busy="true" />;
  return <Trial lesson={lesson} sound={sound} sky={sky} onBack={onBack} />;
}
