import { describe, expect, it } from "vitest";
import { textOf } from "../../../src/cli/findingsText.ts";
import { oneLine } from "../../../src/cli/oneLine.ts";
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

describe("a message that quotes a file from outside", () => {
  it("is one line and does not steer the terminal", () => {
    expect(oneLine("no JSON: {\r\n\t\u001b[31mred\u0007 ä")).toBe("no JSON: { \uFFFD[31mred\uFFFD ä");
  });
  it("makes no finding of its own out of a name", () => {
    const at = { file: "a.yaml", line: 3, column: 9, severity: "error", code: "FW022", hint: "Mend it." } as const;
    const text = textOf([{ ...at, message: 'no "x\nb.yaml:1:1 error FW001 y\u001b[2J"' }]);
    expect(text).toBe('a.yaml:3:9 error FW022 no "x b.yaml:1:1 error FW001 y\uFFFD[2J"\n  Mend it.');
  });
});
