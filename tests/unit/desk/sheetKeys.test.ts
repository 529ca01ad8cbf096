import { describe, expect, it } from "vitest";
import { sheetActOfKey } from "../../../src/desk/sheet/sheetKeys.ts";
import type { SheetMode } from "../../../src/desk/sheet/types.ts";

const press = (key: string, more: { shiftKey?: boolean; ctrlKey?: boolean; repeat?: boolean } = {}) => ({
  key,
  shiftKey: false,
  ctrlKey: false,
  altKey: false,
  metaKey: false,
  repeat: false,
  ...more,
});
const act = (key: string, mode: SheetMode = "turn", more = {}, canPan = false) =>
  sheetActOfKey(press(key, more), mode, canPan);

describe("keys on the sheet", () => {
  it("Shift with the arrows turns by five degrees in every mode, right and down clockwise", () => {
    for (const mode of ["turn", "pin", "pencil", "ruler", "pan"] as const) {
      expect(act("ArrowRight", mode, { shiftKey: true })).toEqual({ kind: "turn", byDeg: 5 });
      expect(act("ArrowUp", mode, { shiftKey: true })).toEqual({ kind: "turn", byDeg: -5 });
    }
  });
  it("bare arrows move the print where it is nearer, the cross where something is set, and else are the page's", () => {
    expect(act("ArrowLeft")).toBeNull();
    expect(act("ArrowLeft", "turn", {}, true)).toEqual({ kind: "pan", right: -1, down: 0 });
    expect(act("ArrowDown", "pin")).toEqual({ kind: "cross", right: 0, down: 1, far: false });
    expect(act("ArrowDown", "ruler", { repeat: true })).toMatchObject({ far: true });
  });
  it("flips, comes nearer and goes to the pin and back", () => {
    expect(act("f")).toEqual({ kind: "flip" });
    expect(act("+", "turn", { shiftKey: true })).toEqual({ kind: "zoom", factor: 1.5 });
    expect(act("-")).toEqual({ kind: "zoom", factor: 1 / 1.5 });
    expect(act("p")).toEqual({ kind: "mode", mode: "pin" });
    expect(act("p", "pin")).toEqual({ kind: "mode", mode: "turn" });
    expect(act("Escape", "pin")).toEqual({ kind: "mode", mode: "turn" });
  });
  it("Enter sets only where there is something to set: elsewhere it is the page's claim", () => {
    expect(act("Enter", "pin")).toEqual({ kind: "set" });
    expect(act("Enter")).toBeNull();
    expect(act("Backspace", "pencil")).toEqual({ kind: "rubOut" });
    expect(act("Backspace", "pin")).toBeNull();
  });
  it("leaves the browser its own", () => {
    expect(act("f", "turn", { ctrlKey: true })).toBeNull();
  });
});
