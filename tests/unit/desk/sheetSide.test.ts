/** Words beside a turned sheet keep off the paper. */
import { describe, expect, it } from "vitest";
import { DEG } from "#core/celestial/vector.ts";
import { freeSide, type Lying, type SideRoom } from "../../../src/desk/play/sheetSide.ts";

const ROOM: SideRoom = {
  words: { width: 250, height: 20 },
  tools: { width: 230, height: 32 },
  left: { x: 892, bottom: 588 },
  right: { x: 1410, bottom: 596 },
  narrowPx: [190, 125],
};
const turned = (deg: number, x = 1190, y = 272): Lying => ({ x, y, width: 424, height: 520, turnRad: deg * DEG });
/** Lowest corner of the paper. */
const lowest = ({ width, height, turnRad, x, y }: Lying) =>
  [1, -1]
    .flatMap((i) => [1, -1].map((k) => [(i * width) / 2, (k * height) / 2] as const))
    .map(([a, b]) => ({
      x: x + a * Math.cos(turnRad) - b * Math.sin(turnRad),
      y: y + a * Math.sin(turnRad) + b * Math.cos(turnRad),
    }))
    .reduce((one, other) => (other.y > one.y ? other : one));

describe("the words beside the sheet", () => {
  it("stand at the right of a sheet that lies straight", () => {
    for (const deg of [0, 180]) expect(freeSide(turned(deg), ROOM)).toEqual({ atLeft: false, lines: 1 });
  });

  it("stand on the side that the lowest corner is not on", () => {
    for (let deg = 0; deg < 360; deg += 3) {
      const paper = turned(deg);
      const corner = lowest(paper);
      if (corner.y < 545) continue;
      const { atLeft } = freeSide(paper, ROOM);
      if (corner.x < 1080) expect(atLeft, `${deg} degrees`).toBe(false);
      if (corner.x > 1290) expect(atLeft, `${deg} degrees`).toBe(true);
    }
  });

  it("go into two lines, or three, only where fewer have no room on either side", () => {
    const kinds = new Set<number>();
    for (let deg = 0; deg < 360; deg += 3) kinds.add(freeSide(turned(deg, 1170, 290), ROOM).lines);
    expect([...kinds].toSorted()).toEqual([1, 2, 3]);
    expect(freeSide(turned(8), ROOM).lines).toBe(1);
  });
});
