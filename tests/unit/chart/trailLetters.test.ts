/** Lettering gives way to the trail, and keeps in view. */
import { describe, expect, it } from "vitest";
import { layLetters } from "#core/chart/letters.ts";
import type { ChartPage } from "#core/chart/page.ts";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import type { ChartMark } from "#core/chart/types.ts";

const PAGE: ChartPage = {
  centre: [1, 0, 0],
  widthPx: 424,
  heightPx: 520,
  marginPx: 18,
  pxPerDeg: 34,
  limitMag: 8,
};
const NAME: ChartMark = {
  kind: "text",
  style: "starName",
  text: "Orlo",
  x: 0,
  y: 0,
  align: "start",
  of: { x: 0, y: 0, r: 5 },
  placed: true,
};
const OPTIONS = { measure: (_: unknown, text: string) => 7 * text.length, pxPerPagePx: 1, typeScale: 1, lit: null };

describe("a name where the trail goes", () => {
  const nameAt = (trail: readonly { x: number; y: number }[]) =>
    layLetters(PAGE, [NAME], PLAIN_VIEW, { ...OPTIONS, trail }).find(({ text }) => text === "Orlo");

  it("stands at the right of its star while nothing is there", () => {
    expect(nameAt([])?.align).toBe("start");
    expect(nameAt([])!.x).toBeGreaterThan(0);
  });

  it("goes to another side where the trail leaves to the right, however few points that has", () => {
    const trail = [
      { x: 0, y: 0 },
      { x: 120, y: 2 },
    ];
    expect(nameAt(trail)!.align === "start" && Math.abs(nameAt(trail)!.y) < 12).toBe(false);
  });

  it("falls away where the trail is everywhere, and its star stays; a word of the hop is never lost", () => {
    const all = Array.from({ length: 400 }, (_, i) => ({ x: (i % 20) * 12 - 120, y: Math.floor(i / 20) * 12 - 120 }));
    expect(nameAt(all)).toBeUndefined();
    const word: ChartMark = { ...NAME, style: "word", text: "target" };
    const laid = layLetters(PAGE, [word, NAME], PLAIN_VIEW, { ...OPTIONS, trail: all });
    expect(laid.map(({ text }) => text)).toEqual(["target"]);
  });

  it("crosses a printed line sooner than the trail", () => {
    const line: ChartMark = { kind: "line", style: "figure", points: [-60, 0, 60, 0] };
    const across = [-1, 1].map((side) => Array.from({ length: 9 }, (_, i) => ({ x: 15 * (i - 4), y: 14 * side })));
    const trail = [...across[0]!, { x: 300, y: -300 }, { x: 300, y: 300 }, ...across[1]!];
    const laid = layLetters(PAGE, [line, NAME], PLAIN_VIEW, { ...OPTIONS, trail }).find(({ text }) => text === "Orlo")!;
    expect(Math.abs(laid.y)).toBeLessThan(8);
  });
});

describe("a sheet that runs out of the window", () => {
  const shown = { left: -150, right: 20, top: -260, bottom: 260 };
  const laidWith = (x: number) =>
    layLetters(PAGE, [{ ...NAME, of: { x, y: 0, r: 5 } } as ChartMark], PLAIN_VIEW, { ...OPTIONS, shown });

  it("keeps its names where they are read whole, on the other side of their star if need be", () => {
    expect(laidWith(-60)[0]!.align).toBe("start");
    expect(laidWith(10)[0]!.align).toBe("end");
    expect(laidWith(60)).toEqual([]);
  });
});

describe("a figure's name", () => {
  const name: ChartMark = { ...NAME, style: "figureName", text: "SAGITTA", of: { x: 0, y: 0, r: 0 } };
  /** Something stands at its middle and about it, 30 px high. */
  const trail = Array.from({ length: 60 }, (_, i) => ({ x: (i % 15) * 12 - 84, y: Math.floor(i / 15) * 8 - 16 }));
  const laidAt = (pxPerDeg: number) => layLetters({ ...PAGE, pxPerDeg }, [name], PLAIN_VIEW, { ...OPTIONS, trail });

  it("wanders off its middle where that is a small step in the sky, and falls away where it would name another part", () => {
    expect(laidAt(34)).toHaveLength(1);
    expect(laidAt(4)).toEqual([]);
  });
});
