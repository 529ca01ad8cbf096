import { beforeEach, describe, expect, it } from "vitest";
import { createGestures, type GestureHost } from "../../../src/desk/sheet/gestures.ts";
import type { SheetMode } from "../../../src/desk/sheet/types.ts";

type Point = { readonly x: number; readonly y: number };
let told: string[];
let turned: number;
let scale: number;
let moved: Point;
let strokes: (readonly Point[] | null)[];

const hostIn = (mode: SheetMode, canPan = false, pivot: Point = { x: 0, y: 0 }): GestureHost => ({
  mode: () => mode,
  canPan: () => canPan,
  pivot: () => ({ ...pivot, r: 50 }),
  held: (on) => told.push(on ? "held" : "let go"),
  turnBy(angleRad) {
    turned += angleRad;
  },
  zoomBy(factor) {
    scale *= factor;
  },
  panBy(dx, dy) {
    moved = { x: moved.x + dx, y: moved.y + dy };
  },
  tap: ({ x, y }) => told.push(`tap ${x} ${y}`),
  stroke(points, done) {
    strokes.push(points && [...points]);
    if (done) told.push(points ? "line" : "no line");
  },
});
const at = (x: number, y: number) => ({ x, y });
const around = (deg: number, r: number, middle: Point = { x: 0, y: 0 }) =>
  at(middle.x + r * Math.cos((deg * Math.PI) / 180), middle.y + r * Math.sin((deg * Math.PI) / 180));

beforeEach(() => {
  [told, turned, scale, moved, strokes] = [[], 0, 1, at(0, 0), []];
});

describe("one finger", () => {
  it("turns the paper by the angle it went about the pivot, past the half circle too", () => {
    const pivot = at(30, -20);
    const fingers = createGestures(hostIn("turn", false, pivot));
    fingers.down(1, around(100, 150, pivot));
    for (let deg = 110; deg <= 260; deg += 10) fingers.move(1, around(deg, 150, pivot));
    fingers.up(1);
    expect((turned * 180) / Math.PI).toBeCloseTo(160, 9);
    expect(told).toEqual(["held", "let go"]);
  });
  it("moves the print where it is nearer than whole, within the ring; outside of it it still turns", () => {
    const inside = createGestures(hostIn("turn", true));
    inside.down(1, at(10, 10));
    inside.move(1, at(40, 25));
    inside.move(1, at(45, 20));
    inside.up(1);
    expect([turned, moved]).toEqual([0, at(35, 10)]);
    const outside = createGestures(hostIn("turn", true));
    outside.down(1, around(0, 120));
    outside.move(1, around(30, 120));
    outside.up(1);
    expect((turned * 180) / Math.PI).toBeCloseTo(30, 9);
  });
  it("sets where it taps, and a small tremble is a tap", () => {
    const fingers = createGestures(hostIn("pin"));
    fingers.down(1, at(100, 0));
    fingers.move(1, at(104, 3));
    fingers.up(1);
    expect(told).toEqual(["held", "tap 104 3", "let go"]);
    expect(turned).toBe(0);
  });
  it("turns the paper in pin mode too, and then sets nothing", () => {
    const fingers = createGestures(hostIn("pin"));
    fingers.down(1, around(0, 120));
    fingers.move(1, around(20, 120));
    fingers.up(1);
    expect(told).toEqual(["held", "let go"]);
    expect(turned).toBeGreaterThan(0.3);
  });
  it("draws a line with the pencil and a straight one with the ruler", () => {
    const pencil = createGestures(hostIn("pencil"));
    pencil.down(1, at(0, 0));
    for (const x of [10, 20, 21, 30]) pencil.move(1, at(x, x / 2));
    pencil.up(1);
    expect(strokes.at(-1)).toEqual([at(0, 0), at(10, 5), at(20, 10), at(30, 15)]);
    const ruler = createGestures(hostIn("ruler"));
    ruler.down(2, at(0, 0));
    for (const x of [10, 20, 30]) ruler.move(2, at(x, x));
    ruler.up(2);
    expect(strokes.at(-1)).toEqual([at(0, 0), at(30, 30)]);
    expect(told.filter((what) => what === "line").length).toBe(2);
  });
  it("gives a line up when the system takes the finger away", () => {
    const pencil = createGestures(hostIn("pencil"));
    pencil.down(1, at(0, 0));
    pencil.move(1, at(20, 0));
    pencil.up(1, true);
    expect(told).toEqual(["held", "no line", "let go"]);
  });
});

describe("two fingers", () => {
  it("turn and bring nearer at once, and what one of them had begun is given up", () => {
    const fingers = createGestures(hostIn("pencil"));
    fingers.down(1, at(-100, 0));
    fingers.move(1, at(-80, 0));
    fingers.down(2, at(80, 0));
    fingers.move(2, around(40, 80));
    fingers.move(2, around(90, 80));
    fingers.up(2);
    fingers.up(1);
    // From (-80, 0) the second finger went from straight right to 45 degrees below it, and nearer.
    expect((turned * 180) / Math.PI).toBeCloseTo(45, 9);
    expect(scale).toBeCloseTo(Math.hypot(80, 80) / 160, 9);
    expect(told).toEqual(["held", "no line", "let go"]);
  });
  it("move the print with their middle where it can be moved", () => {
    const fingers = createGestures(hostIn("turn", true));
    fingers.down(1, at(-50, 0));
    fingers.down(2, at(50, 0));
    fingers.move(1, at(-30, 10));
    fingers.move(2, at(70, 10));
    fingers.up(1);
    fingers.up(2);
    expect(moved.x).toBeCloseTo(20, 9);
    expect(moved.y).toBeCloseTo(10, 9);
    expect(turned).toBeCloseTo(0, 9);
  });
  it("end as a gesture, not as a tap", () => {
    const fingers = createGestures(hostIn("pin"));
    fingers.down(1, at(-50, 0));
    fingers.down(2, at(50, 0));
    fingers.move(2, at(80, 0));
    fingers.up(2);
    fingers.up(1);
    expect(told).toEqual(["held", "let go"]);
  });
});
