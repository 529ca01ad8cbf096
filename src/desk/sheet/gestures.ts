/**
 * What fingers on the paper mean. One finger turns, moves the print, sets, draws or measures, as the mode has it; two turn,
 * bring nearer and move at once. Places are px on the screen from the sheet's middle, x right, y down.
 */
import type { SheetMode } from "./types.ts";

type Point = { readonly x: number; readonly y: number };
export interface GestureHost {
  mode(): SheetMode;
  /** The print is nearer than whole: it can be moved. */
  canPan(): boolean;
  /** What the paper turns about, and how far the part reaches within which a drag moves the print. */
  pivot(): Point & { readonly r: number };
  /** A gesture begins or ends; between the two nothing may be laid anew. */
  held(on: boolean): void;
  turnBy(angleRad: number, about: Point): void;
  zoomBy(factor: number, about: Point): void;
  panBy(dx: number, dy: number): void;
  tap(at: Point): void;
  /** A line being drawn, from its first place on; `done` with the last one. Null: it is given up. */
  stroke(points: readonly Point[] | null, done: boolean): void;
}
export interface Gestures {
  down(id: number, at: Point): void;
  move(id: number, at: Point): void;
  up(id: number, cancelled?: boolean): void;
}
/** A finger that moved less than this has tapped. */
const TAP_PX = 8;
/** Nearer to the pivot than this an angle is noise. */
const DEAD_PX = 14;
const STROKE_STEP_PX = 3;

type Act = "turn" | "pan" | "stroke" | "wait";
const between = (a: Point, b: Point) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);
const angleOf = (from: Point, to: Point) => Math.atan2(to.y - from.y, to.x - from.x);
const wrapped = (angle: number) => angle - 2 * Math.PI * Math.round(angle / (2 * Math.PI));

export function createGestures(host: GestureHost): Gestures {
  const fingers = new Map<number, Point>();
  let act: Act = "wait";
  let start: Point = { x: 0, y: 0 };
  let stroke: Point[] = [];
  let moved = false;

  const actFor = (at: Point): Act => {
    const mode = host.mode();
    if (mode === "pencil" || mode === "ruler") return "stroke";
    const pivot = host.pivot();
    const inside = mode === "pan" || apart(at, pivot) < pivot.r;
    return inside && host.canPan() ? "pan" : "turn";
  };
  const turn = (from: Point, to: Point) => {
    const pivot = host.pivot();
    if (apart(from, pivot) < DEAD_PX || apart(to, pivot) < DEAD_PX) return;
    host.turnBy(wrapped(angleOf(pivot, to) - angleOf(pivot, from)), pivot);
  };
  const drawOn = (at: Point) => {
    const last = stroke.at(-1)!;
    if (host.mode() === "ruler") stroke = [stroke[0]!, at];
    else if (apart(last, at) >= STROKE_STEP_PX) stroke.push(at);
    else return;
    host.stroke(stroke, false);
  };
  const one = (from: Point, to: Point) => {
    if (!moved && apart(start, to) < TAP_PX) return;
    // What the first few px held back comes with the next ones.
    const origin = moved ? from : start;
    moved = true;
    if (act === "turn") turn(origin, to);
    else if (act === "pan") host.panBy(to.x - origin.x, to.y - origin.y);
    else if (act === "stroke") drawOn(to);
  };
  const two = (id: number, from: Point, to: Point) => {
    const other = [...fingers].find(([key]) => key !== id)?.[1];
    if (!other) return;
    moved = true;
    const middle = between(other, to);
    const was = between(other, from);
    if (apart(other, from) > DEAD_PX && apart(other, to) > DEAD_PX) {
      host.turnBy(wrapped(angleOf(other, to) - angleOf(other, from)), host.pivot());
      host.zoomBy(apart(other, to) / apart(other, from), middle);
    }
    if (host.canPan()) host.panBy(middle.x - was.x, middle.y - was.y);
  };
  return {
    down(id, at) {
      fingers.set(id, at);
      if (fingers.size === 1) {
        [start, moved] = [at, false];
        act = actFor(at);
        stroke = [at];
        host.held(true);
      } else {
        if (act === "stroke") host.stroke(null, true);
        act = "wait";
      }
    },
    move(id, to) {
      const from = fingers.get(id);
      if (!from) return;
      if (fingers.size === 1) one(from, to);
      else two(id, from, to);
      fingers.set(id, to);
    },
    up(id, cancelled = false) {
      const at = fingers.get(id);
      if (!at) return;
      fingers.delete(id);
      if (fingers.size > 0) return;
      if (act === "stroke") host.stroke(moved && !cancelled ? stroke : null, true);
      if (!moved && !cancelled) host.tap(at);
      act = "wait";
      host.held(false);
    },
  };
}
