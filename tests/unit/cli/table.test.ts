import { describe, expect, it } from "vitest";
import { table } from "../../../src/cli/table.ts";

describe("a table", () => {
  it("has numbers to the right and words to the left", () => {
    expect(
      table(
        ["name", "V"],
        [
          ["Vega", "0.03"],
          ["Arcturus", "-0.05"],
        ],
      ),
    ).toBe("name          V\nVega       0.03\nArcturus  -0.05");
  });
  it("may be as long as a whole sky", () => {
    const rows = Array.from({ length: 300_000 }, (_, i) => [String(i)]);
    expect(table(["number"], rows).split("\n")).toHaveLength(300_001);
  });
});
