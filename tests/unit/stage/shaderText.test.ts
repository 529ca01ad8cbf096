import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { packed } from "../../../src/tools/shaderText.ts";

const folder = fileURLToPath(new URL("../../../src/stage/", import.meta.url));

describe("shader text on its way to the page", () => {
  it("loses indentation and its own comments, and nothing else", () => {
    const text = "const A = `\n#version 300 es\n  // why\n  float a = 1.; // kept\n`;\n\n  const b = 1 /\n    2;\n";
    expect(packed(text)).toBe("const A = `\n#version 300 es\nfloat a = 1.; // kept\n`;\n\nconst b = 1 /\n2;\n");
  });
  it("keeps every word of every file that the stage is made of", () => {
    const words = (code: string) =>
      code
        .replace(/^\s*\/\/.*$/gm, "")
        .split(/\s+/)
        .filter(Boolean);
    const files = readdirSync(folder).filter((name) => name.endsWith(".ts"));
    expect(files.length).toBeGreaterThan(20);
    for (const name of files) {
      const code = readFileSync(folder + name, "utf8");
      expect(words(packed(code)), name).toEqual(words(code));
    }
  });
});
