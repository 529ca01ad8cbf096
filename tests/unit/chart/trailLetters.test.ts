/** Lettering gives way to the trail. */
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

  it("is not lost where the trail is everywhere", () => {
    const all = Array.from({ length: 400 }, (_, i) => ({ x: (i % 20) * 12 - 120, y: Math.floor(i / 20) * 12 - 120 }));
    expect(nameAt(all)).toBeDefined();
  });
});
