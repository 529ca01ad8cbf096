/** The dial of the limit on the rim: a tick each fifth of a magnitude, a figure each whole one. */
export interface DialTick {
  readonly atDeg: number;
  readonly magV: number;
  readonly whole: boolean;
  /** Seen: up to the limit. */
  readonly within: boolean;
}
export interface Dial {
  readonly ticks: readonly DialTick[];
  readonly limitDeg: number;
}
export const DIAL = { fromDeg: 252, toDeg: 300, spanMag: 4 } as const;

/**
 * The dial for a limit: four magnitudes that hold that of the adapted eye in their upper half; where the limit in force lies
 * lower yet, they begin with it.
 */
export function dialOf(limitMag: number, adaptedMag: number): Dial {
  const from = Math.floor(Math.min(limitMag, adaptedMag - 2));
  const at = (magV: number) => DIAL.fromDeg + ((DIAL.toDeg - DIAL.fromDeg) * (magV - from)) / DIAL.spanMag;
  const ticks = Array.from({ length: DIAL.spanMag * 5 + 1 }, (_, i) => {
    const magV = from + i / 5;
    return { atDeg: at(magV), magV, whole: i % 5 === 0, within: magV <= limitMag + 0.01 };
  });
  return { ticks, limitDeg: at(limitMag) };
}
