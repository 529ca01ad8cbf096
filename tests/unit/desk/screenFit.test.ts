import { expect, test } from "vitest";
import { NOT_FITTED, readFit } from "../../../src/desk/screen/kept.ts";

test("what was kept of a screen is read again", () => {
  const fit = { leastLuminance: 0.02, cardPx: 340, distance: "hall", projector: true };
  expect(readFit(structuredClone(fit))).toEqual(fit);
});

test("whatever does not hold is as if it had not been told", () => {
  for (const kept of [undefined, null, 7, "x", [], true, {}]) expect(readFit(kept)).toEqual(NOT_FITTED);
  for (const bad of [Number.NaN, -0.1, 1.1, Infinity, "0.5", null, {}])
    expect(readFit({ leastLuminance: bad }).leastLuminance).toBeNull();
  for (const bad of [0, -340, 1e9, Number.NaN, "340", [340]]) expect(readFit({ cardPx: bad }).cardPx).toBeNull();
  for (const bad of ["toString", "__proto__", "far", 600, null])
    expect(readFit({ distance: bad }).distance).toBe("desk");
  for (const bad of [1, "true", {}]) expect(readFit({ projector: bad }).projector).toBe(false);
});
