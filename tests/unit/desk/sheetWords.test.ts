import { describe, expect, it } from "vitest";
import { PLAIN_VIEW } from "#core/chart/sheetView.ts";
import { channelsOf, dimming, parsePool, readableShare } from "../../../src/desk/sheet/look.ts";
import { crossWords, thingWords, viewWords } from "../../../src/desk/sheet/sheetWords.ts";

const DEG = Math.PI / 180;
const lies = (part: Partial<typeof PLAIN_VIEW>) => viewWords({ ...PLAIN_VIEW, ...part });

describe("how the sheet lies, in words", () => {
  it("says side, turn and how near", () => {
    expect(lies({})).toBe("From the front, north at the top");
    expect(lies({ flipped: true, turnRad: -21 * DEG })).toBe("From behind, turned 21° to the left");
    expect(lies({ turnRad: 201 * DEG })).toBe("From the front, turned 159° to the left");
    expect(lies({ turnRad: 180 * DEG })).toBe("From the front, turned by half");
    expect(lies({ turnRad: -180 * DEG })).toBe("From the front, turned by half");
    expect(lies({ turnRad: 725 * DEG, scale: 2 })).toBe("From the front, turned 5° to the right, 2.0 times nearer");
  });
});

describe("what is printed, in words", () => {
  const dir = [1, 0, 0] as const;
  it("tells way and distance, and what has no name by its magnitude", () => {
    expect(thingWords({ what: "target", name: "", fields: 1.13, hour: 11, dir })).toBe(
      "Target: 1.1 fields, towards 11 o'clock",
    );
    expect(thingWords({ what: "star", name: "13", magV: 4.58, fields: 0.5, hour: 2, dir })).toContain(
      "star 13, magnitude 4.6",
    );
    expect(thingWords({ what: "star", name: "", magV: 6, fields: 0.5, hour: 2, dir })).toContain(
      "star of magnitude 6.0",
    );
    expect(thingWords({ what: "anchor", name: "γ", fields: 0, hour: 12, dir })).toBe("Anchor");
  });
  it("tells where the cross stands from what has a name", () => {
    const words = crossWords([
      { what: "star", name: "", magV: 7, fields: 0.05, hour: 3, dir },
      { what: "anchor", name: "", fields: 0.4, hour: 6, dir },
    ]);
    // The anchor is below the cross, so the cross is above the anchor.
    expect(words).toBe("Cross 0.4 fields from Anchor, towards 12 o'clock of it");
  });
});

describe("the light on the paper", () => {
  const full = parsePool("radial-gradient(circle 430px at 50% 50%, #8f897e, #888277 50%, #7d776d 76%, #5d5850)");
  const low = parsePool("radial-gradient(circle 400px at 50% 50%,#847e73,#807a70 42%,#7c766c 70%,#4a463f)");
  const red = parsePool("radial-gradient(circle 330px at 50% 50%, #7e0000, #7a0000 40%, #520000 62%, #1c0000)");
  it("is read from the style sheet", () => {
    expect(full).toMatchObject({ radiusPx: 430 });
    expect(full.stops.map(({ at }) => at)).toEqual([0, 0.5, 0.76, 1]);
    expect(channelsOf("#fff")).toEqual([255, 255, 255]);
  });
  it("ends for lettering where the ink would fall under 4.5 to 1", () => {
    expect(readableShare(full, false)).toBeCloseTo(0.77, 1);
    expect(readableShare(low, false)).toBeCloseTo(0.7, 1);
    expect(readableShare(red, true) * red.radiusPx).toBeCloseTo(132, -1);
  });
  it("turned low is the full one under black", () => {
    for (const { at, alpha } of dimming(full, low)) {
      const lowRed = at <= 0.42 ? 0x84 + ((0x80 - 0x84) * at) / 0.42 : null;
      if (lowRed === null) continue;
      const share = (at * 400) / 430;
      const fullRed = 0x8f + ((0x88 - 0x8f) * share) / 0.5;
      expect(fullRed * (1 - alpha)).toBeCloseTo(lowRed, 0);
    }
    expect(dimming(red, red).every(({ alpha }) => alpha === 0)).toBe(true);
  });
});
