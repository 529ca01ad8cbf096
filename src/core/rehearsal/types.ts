/** What a simulated learner is given, and what it does. It never gets the pointing. */
import type { Patch } from "#core/field/visiblePatches.ts";
import type { VisibleStars } from "#core/field/visibleStars.ts";
import type { GearId } from "#core/seams/index.ts";

/** A place on the paper, px, x right and y down as chart marks have it. */
export type PaperPoint = { readonly x: number; readonly y: number };
export type PaperStar = PaperPoint & { readonly magV: number };

/** What a learner knows of an instrument: its name, how wide its field is on the paper, and whether it mirrors. */
export type GearInHand = { readonly id: GearId; readonly radiusPx: number; readonly parity: 1 | -1 };

/** What the target's sign tells: a patch that is no star; a star that the page has not; or stars that it has. */
export type Sought = "patch" | "stranger" | "printed";

export type RehearsalTask = {
  /** Stars printed on the page. */
  readonly stars: readonly PaperStar[];
  /** Where the anchor is printed: there the learner starts. */
  readonly anchor: PaperPoint;
  readonly target: PaperPoint;
  readonly sought: Sought;
  /** How much sky a pixel of the page is, radians. */
  readonly radPerPx: number;
  readonly hopping: GearInHand;
  readonly claim: GearInHand;
};

/** One look through the instrument in use. */
export type Look = {
  readonly stars: VisibleStars;
  readonly patches: readonly Patch[];
  /** Somebody asks: where are you? */
  readonly pinAsked: boolean;
};

/** Pushes are what the hand does on the two axes, radians, before whatever the mount makes of it. */
export type LearnerMove =
  | { readonly kind: "push"; readonly axis1: number; readonly axis2: number }
  | { readonly kind: "pin"; readonly at: PaperPoint }
  | { readonly kind: "use"; readonly gear: GearId }
  | { readonly kind: "claim"; readonly says: "here" | "notSeen" }
  | { readonly kind: "restart" }
  | { readonly kind: "giveUp" };

export interface Rehearsal {
  /** What the learner does after this look. */
  next(look: Look): LearnerMove;
}
