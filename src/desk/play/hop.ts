/** What the parts of a running hop share: made once the sky is there and the attempt compiled. */
import { emptyField, type SeenField } from "#core/field/seenField.ts";
import type { Facts } from "#core/lesson/steps.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import type { Dir } from "#core/seams/index.ts";
import { gearInUse } from "#core/session/session.ts";
import type { Sound, Store } from "../app/ports.ts";
import type { Attempt } from "./attempt.ts";
import type { Keeper } from "./keep.ts";
import type { Loading } from "./loading.ts";
import type { Mutable } from "./mutable.ts";
import type { Night } from "./night.ts";
import { createPicture, type Picture, type Sun } from "./picture.ts";
import { createProgress, type Progress } from "./progress.ts";
import type { PlaySignals } from "./signals.ts";
import type { OpenSky } from "./skies.ts";
import type { Steering } from "./steering.ts";

export interface Ports {
  readonly store: Store;
  readonly sound: Sound;
}
/** Where the eye looks, and how used to the dark it is. */
export interface Eye {
  /** What it lacks of its adaptation, mag. */
  lackMag(nowMs: number): number;
  /** Writes into the picture where it looks, on a field of so many CSS px radius. Before each frame; allocates nothing. */
  look(nowMs: number, fieldRadiusCssPx: number): void;
  /** It is on its way, or grows used to the dark: the next frame differs. */
  readonly moves: boolean;
  /** It heeds nothing any more, and what was held is let go. */
  stop(): void;
}
export interface Hop {
  readonly lesson: Lesson;
  readonly signals: PlaySignals;
  readonly ports: Ports;
  readonly sky: OpenSky;
  /** Where a look round began, in which nothing is sought; undefined in a hop. */
  readonly lookFrom?: Dir | undefined;
  readonly loading: Loading;
  readonly attempt: Attempt;
  readonly picture: Picture;
  readonly steering: Steering;
  /** How things stand, as far as the lesson's words depend on it. */
  readonly facts: Mutable<Facts>;
  readonly progress: Progress;
  readonly keeper: Keeper;
  readonly sun: Mutable<Sun>;
  readonly night: Night;
  /** Whether the hop can start at the hour that was set last, once that has been worked out; null at the lesson's own. */
  hourStands: Promise<boolean> | null;
  /** Null until its code is there. */
  eye: Eye | null;
  /** What tells a leg's waymark from its rival: where hints are generated, once the stars are there. */
  tellApart: ((leg: number) => string) | null;
  /** What the instrument in use shows now; filled anew before each frame. */
  readonly field: SeenField;
  /** Something is to be drawn. */
  invalidate(): void;
  /** The attempt has ended. */
  ended(): void;
  /** Milliseconds of the page's clock at which animations began; 0 where none runs. */
  readonly motion: { changedMs: number; rightMs: number; proofMs: number };
}

/** Points are counted: not in a lesson that only counts claims, where nothing is at stake. */
export const countsPoints = ({ lesson }: Pick<Hop, "lesson">): boolean => "points" in lesson.pass;

/** Lessons at these levels tell more than the sky does: agreement, reached marks, the way. */
export const isGuided = ({ lesson }: Pick<Hop, "lesson">): boolean => lesson.level === "G" || lesson.level === "C";
/** Only the first lessons draw the trail and the cross as they grow. */
export const showsTrail = ({ lesson }: Pick<Hop, "lesson">): boolean =>
  lesson.level === "G" && lesson.aids.trail !== "off";

/** The screws that could be turned now: there are some on a finder alone, and not where the hop is decided in it. */
export function hasScrews({ attempt: { session, compiled } }: Hop): boolean {
  if (gearInUse(session).kind !== "finder") return false;
  return session.state.phase === "anchor" || gearById(compiled.spec.claimGear).kind !== "finder";
}

type Needed = Omit<Hop, "picture" | "eye" | "tellApart" | "hourStands" | "facts" | "progress" | "field" | "motion">;

export function createHop(needed: Needed, tell: (mark: string) => void): Hop {
  const { session } = needed.attempt;
  return {
    ...needed,
    picture: createPicture(),
    eye: null,
    tellApart: null,
    hourStands: null,
    facts: {
      moved: session.events.length > 0,
      anchorNear: false,
      anchorConfirmed: session.state.phase !== "anchor",
      gear: gearInUse(session).kind,
      marksReached: 0,
      nearTarget: false,
      lost: false,
    },
    progress: createProgress(needed.attempt.compiled, tell),
    field: emptyField(),
    motion: { changedMs: 0, rightMs: 0, proofMs: 0 },
  };
}
