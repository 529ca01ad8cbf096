/**
 * What the play screen shows and may ask for. The controller keeps it; the panels read it and know nothing of sessions,
 * skies or graphics.
 */
import type { ReadonlySignal, Signal } from "@preact/signals";
import type { ChartPage } from "#core/chart/page.ts";
import type { ChartMark } from "#core/chart/types.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Dir, Gear, Grade } from "#core/seams/index.ts";
import type { Reach } from "../../stage/index.ts";
import type { SheetMode, SheetView } from "../sheet/types.ts";
import type { WayRow } from "../steps/WayRows.tsx";
import type { StarePlace } from "./gaze.ts";
import type { LimitShare } from "./limits.ts";

/** A direction on the rim, clockwise from the top, degrees. */
export type RimDeg = number;

/** The large words beside the field: what to do now. */
export interface Now {
  readonly headline: string;
  readonly text: string;
}
/** A hint as a row: what it offers, what it costs, what it said. */
export interface HintRow {
  readonly grade: Grade;
  readonly state: "ready" | "used" | "later" | "off";
  /** Price in points; the third grade has none but ends the scored part. */
  readonly price: number | null;
  /** Said once taken. */
  readonly text: string | null;
}
/** A ring of the ladder. */
export interface LadderRing {
  readonly gear: Gear;
  readonly fieldDeg: number;
  readonly inUse: boolean;
}
/** A star of the ladder: distance from the pointing and direction, zenith up, correct image. */
export interface LadderStar {
  readonly awayDeg: number;
  readonly atDeg: RimDeg;
  readonly radiusPx: number;
}
export interface Compass {
  readonly northDeg: RimDeg;
  readonly eastDeg: RimDeg;
}
/** Where the hand holds the tube and which way it pushes at the moment; null while it does not push. */
export interface HandMark {
  readonly towardDeg: RimDeg;
  readonly pushing: boolean;
}
export interface SheetPin {
  readonly at: Dir;
  /** Where the tube really pointed: known after an asked pin, and in the report. */
  readonly truth?: Dir | undefined;
}
/** The moment of agreement: the three stars that prove it. */
export interface Proof {
  readonly stars: readonly Dir[];
}

/** An aid that can be switched; `cost` is 0 where it is free. */
export interface AidOffer {
  readonly offered: boolean;
  readonly on: boolean;
  readonly cost: number;
}

/** A step of the way as rows have it, and the way itself. */
export type WayStep = WayRow;
export interface WayList {
  /** True field of the instrument that the steps are measured in. */
  readonly fieldDeg: number;
  readonly steps: readonly WayStep[];
}
/** The time of the night, and between which it may be set, in steps of `stepMs`. */
export interface NightClock {
  readonly atMs: number;
  readonly leastMs: number;
  readonly mostMs: number;
  readonly stepMs: number;
  readonly words: string;
}

/** What has to be said of an hour that the night was set to. */
export interface HourTold {
  readonly words: string;
  /** What leads back to the lesson's hour, as a button says it. */
  readonly back: string;
  /** The hop can start then. */
  readonly isPossible: boolean;
}

export type Phase = "loading" | "failed" | "briefing" | "play" | "ended";

export interface PlayModel {
  readonly lesson: Lesson;
  /** A look round: nothing is sought, claimed or given up. */
  readonly isLook: boolean;
  /** The stars are those of the reader's own catalogue; nothing is kept of the hop. */
  readonly ownStars: boolean;
  readonly phase: ReadonlySignal<Phase>;
  /** Why the sky did not come, in words for people. */
  readonly trouble: ReadonlySignal<string | null>;

  // ---- the barrel
  readonly gear: ReadonlySignal<Gear>;
  readonly limitMag: ReadonlySignal<number>;
  /** What the eye lacks of it while it grows used to the dark, to 0.1 mag. */
  readonly lackMag: ReadonlySignal<number>;
  /** Between which the limit may be set by hand; null where it is only read. */
  readonly limitRange: ReadonlySignal<{ readonly least: number; readonly most: number } | null>;
  /** Null where the lesson does not allow it, or for the naked eye. */
  readonly compass: ReadonlySignal<Compass | null>;
  readonly handMark: ReadonlySignal<HandMark | null>;
  /** Whether the claim is offered, and what it says where it is not. */
  readonly claim: ReadonlySignal<{
    readonly can: boolean;
    readonly why: string | null;
    readonly wrongCost: number;
    readonly wrongClaims: number;
  }>;
  /** The anchor is sought: the rim offers "the star is in the middle" instead of the claim. */
  readonly seeking: ReadonlySignal<boolean>;
  /** The field as said to one who does not see it. */
  readonly fieldWords: ReadonlySignal<string>;

  // ---- the ladder
  readonly ladder: ReadonlySignal<readonly LadderRing[]>;
  /** Empty where the image in use is not correct. */
  readonly ladderStars: ReadonlySignal<readonly LadderStar[]>;
  readonly altitudeDeg: ReadonlySignal<number>;

  // ---- words
  readonly now: ReadonlySignal<Now>;
  /** One short line that came up last: a restart, a wrong claim, the Sun's caution. Said aloud. */
  readonly notice: ReadonlySignal<string | null>;
  readonly hints: ReadonlySignal<readonly HintRow[]>;
  /** "Back to the anchor" is offered, and what it costs at most. */
  readonly home: ReadonlySignal<{ readonly can: boolean; readonly cost: number }>;
  /** Three short lines: time, height in fists, sky. */
  readonly conditions: ReadonlySignal<readonly [time: string, height: string, sky: string]>;
  /** What limits the view right now, cause by cause. */
  readonly limits: ReadonlySignal<readonly LimitShare[]>;
  /** Trail and shortest way, in guided lessons alone. */
  readonly lengths: ReadonlySignal<{ readonly trailDeg: number; readonly wayDeg: number } | null>;
  /** The way step by step, in guided lessons alone. */
  readonly way: ReadonlySignal<WayList | null>;
  readonly carry: ReadonlySignal<AidOffer>;
  /** "Lay the sheet as in my instrument": offered where the lesson has it. */
  readonly asInInstrument: ReadonlySignal<AidOffer>;

  // ---- the night and the gear
  /** There are invented stars in the picture, as grain. */
  readonly grain: ReadonlySignal<boolean>;
  /** Null once the hop is on: the sky would carry the tube. */
  readonly night: ReadonlySignal<NightClock | null>;
  /** Where the hour that was set makes a difference to what is said or to the hop. */
  readonly hour: ReadonlySignal<HourTold | null>;
  /** Where the sky turns on by itself: whether it does now; null where it stands still. */
  readonly skyTurns: ReadonlySignal<boolean | null>;
  /** Whether the hand is on the finder's screws; null where there are none to turn. */
  readonly screws: ReadonlySignal<boolean | null>;

  // ---- the sheet
  readonly page: ReadonlySignal<ChartPage | null>;
  readonly marks: ReadonlySignal<readonly ChartMark[]>;
  readonly sheetView: Signal<SheetView>;
  readonly sheetMode: Signal<SheetMode>;
  /** White on the sheet: only what the level allows. */
  readonly ring: ReadonlySignal<{ readonly dir: Dir; readonly fieldDeg: number } | null>;
  readonly pointing: ReadonlySignal<Dir | null>;
  readonly trail: ReadonlySignal<readonly Dir[]>;
  readonly pins: ReadonlySignal<readonly SheetPin[]>;
  readonly pencil: ReadonlySignal<readonly (readonly Dir[])[]>;
  /** A question to be answered on the sheet: where does the tube point now? */
  readonly asksPin: ReadonlySignal<boolean>;
  /** Agreement with the field, said in guided and completion lessons; null elsewhere. */
  readonly agrees: ReadonlySignal<boolean | null>;
  readonly proof: ReadonlySignal<Proof | null>;
  /** The hand is on the field: the lamp over the sheet is low. */
  readonly handOnField: ReadonlySignal<boolean>;

  // ---- the eye
  /** What is stared at; null while the eye looks about. */
  readonly stare: ReadonlySignal<StarePlace | null>;
  /** The eye looks beside whatever is faint. */
  readonly beside: ReadonlySignal<boolean>;
  /** A white torch shines, for a moment. */
  readonly torch: ReadonlySignal<boolean>;

  // ---- acts
  begin(): void;
  use(gearId: string): void;
  wider(): void;
  narrower(): void;
  confirm(): void;
  claimHere(): void;
  claimNotSeen(): void;
  restart(): void;
  takeHint(): void;
  setLimit(limitMag: number): void;
  /** Asks again for what did not come. */
  retry(): void;
  setCarry(on: boolean): void;
  setAsInInstrument(on: boolean): void;
  giveUp(): void;
  setTime(utcMs: number): void;
  /** By so many steps, from a key. */
  stepTime(by: 1 | -1): void;
  /** To the lesson's own hour. */
  resetTime(): void;
  setSkyTurns(on: boolean): void;
  setScrews(on: boolean): void;
  pinAt(dir: Dir): void;
  leavePin(): void;
  drawPencil(dirs: readonly Dir[]): void;
  rubOut(): void;
  sheetTurned(view: SheetView): void;
  /** A drag on the field of so many CSS px; x right, y down. */
  drag(dxPx: number, dyPx: number): void;
  dragging(on: boolean): void;
  /** Null: no more. Moves nothing, and costs nothing. */
  stareAt(place: StarePlace | null): void;
  lookBeside(on: boolean): void;
  /** For a moment; the eye loses the dark by it, where the reader wants that. */
  shineTorch(): void;
  /** Arrow keys held: -1, 0 or 1 along right and up, from a moment of the page's clock on, ms. */
  steer(right: -1 | 0 | 1, up: -1 | 0 | 1, fine: boolean, atMs: number): void;
  /** Gives the controller the canvas; called again where the canvas is a new one. */
  mount(canvas: HTMLCanvasElement): Promise<void>;
  /**
   * Radius of the field on the page, CSS px, and the ring's width.
   * @param open how far the canvas may reach where the sky is open; null: not beyond the field
   */
  resize(fieldRadiusPx: number, rimPx: number, open: Reach | null): void;
  unmount(): void;
}
