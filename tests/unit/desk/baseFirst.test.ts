import { describe, expect, it } from "vitest";
import { withBaseFirst } from "../../../src/tools/baseFirst.ts";

const link = (name: string) => `    <link rel="stylesheet" crossorigin href="./assets/${name}-Ab1.css">\n`;
const page = (...names: string[]) => `<head>\n    <title>Faintward</title>\n${names.map(link).join("")}  </head>\n`;

describe("the built page's style sheets", () => {
  it("begin with the one that all others build upon; the others keep their order", () => {
    expect(withBaseFirst(page("Corners", "sheet", "base"))).toBe(page("base", "Corners", "sheet"));
    expect(withBaseFirst(page("base", "sheet"))).toBe(page("base", "sheet"));
  });
  it("are not built without it, or with two of it", () => {
    expect(() => withBaseFirst(page("Corners"))).toThrow(/one base style sheet/);
    expect(() => withBaseFirst(page("base", "base"))).toThrow(/one base style sheet/);
  });
});
