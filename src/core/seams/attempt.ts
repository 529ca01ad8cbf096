/** The attempt, compiled once at its start. `score` owns HopSpec, `lesson` maps to it: so score knows no lesson. */
import type { Band, GearId, MountKind, Seeing, Stance } from "./gear.ts";
import type { MasDir, Resident, SkyRef, TileKey } from "./sky.ts";

export type Mark = { readonly dir: MasDir; readonly name: string };
/** From the anchor (first mark) to the target (last mark); length along the great circles between them. */
export type Route = { readonly marks: readonly Mark[]; readonly lengthDas: number };
/** Whole points; the sum is 100. */
export type Weights = { readonly directness: number; readonly pins: number; readonly care: number };
export type Aid = "ring" | "compass" | "limits" | "asInInstrument" | "carry" | "trail" | "hints";
export type AidTerm = "free" | "priced" | "off";
/** Guided, completion, problem, memory. */
export type Level = "G" | "C" | "P" | "M";
export type TargetSpec = { readonly dir: MasDir; readonly sizeDas: number; readonly objectId: string };
export interface HopSpec {
  readonly sky: SkyRef;
  readonly anchor: MasDir;
  readonly targets: readonly TargetSpec[];
  /** Other objects near the targets, whatever their brightness: what a claim might mean instead. */
  readonly neighbours: readonly TargetSpec[];
  /** Named ways, each from the anchor to the target. */
  readonly ways: readonly Route[];
  readonly hoppingGear: GearId;
  readonly claimGear: GearId;
  readonly gear: readonly GearId[];
  readonly mount: MountKind;
  readonly stance: Stance;
  /** Latitude north, longitude east positive, mas. */
  readonly siteMas: readonly [lat: number, lon: number];
  /** When the hop starts, UTC, ms since 1970-01-01T00:00Z: the lesson's hour, or the one that the night was set to. */
  readonly startMs: number;
  readonly drift: boolean;
  readonly weights: Weights;
  readonly aids: Readonly<Record<Aid, AidTerm>>;
  readonly level: Level;
  /** Finder against telescope, das on the two axes. */
  readonly finderOffsetDas: readonly [axis1: number, axis2: number];
}
export type GearLimit = {
  readonly gear: GearId;
  readonly fieldDas: number;
  readonly avertedMilliMag: number;
  readonly directMilliMag: number;
};
export interface CompiledAttempt {
  readonly versions: {
    readonly record: number;
    readonly score: number;
    readonly sky: number;
    readonly generator: number;
    readonly seeing: number;
    readonly solver: string;
  };
  readonly spec: HopSpec;
  readonly ways: readonly Route[];
  readonly parDas: number;
  readonly hoppingFieldDas: number;
  readonly limits: readonly GearLimit[];
  /** The zenith at the start: what "up" means for the direction of a push. */
  readonly zenith: MasDir;
  /** How far the tube goes for a push of the hand, per axis, 1000 = as pushed; drawn within 750 .. 1250. */
  readonly gainPermille: readonly [axis1: number, axis2: number];
  readonly knock?: { readonly atMs: number; readonly byDas: readonly [axis1: number, axis2: number] } | undefined;
  /** The neighbours that the claim instrument shows. */
  readonly rivals: readonly TargetSpec[];
  /** How the claim instrument shows each target: where it is not seen, "right place, nothing seen" is right. */
  readonly targetBands: readonly Band[];
  /**
   * Stars about the way for the habits (raMas, decMas, milliMag triples), and the places in that list of those that pass for
   * a mark; null where habits are off.
   */
  readonly context: { readonly stars: Int32Array; readonly lookAlikes: readonly number[] } | null;
}
/** Pure and exact: the same integers in every engine. `needs` names tiles that must be resident first. */
export type Compile = (
  spec: HopSpec,
  stars: Resident,
  seeing: Seeing,
  seed: number,
) => { readonly ok: CompiledAttempt } | { readonly needs: readonly TileKey[] };
