import { describe, expect, it } from "vitest";
import { fileNameFor, readFile, shownName } from "../../../src/desk/bench/files.ts";

const fileOf = (text: string, name = "a.yaml") => new File([text], name);

describe("files on the bench", () => {
  it("come in with line ends as a text field keeps them", async () => {
    expect(await readFile(fileOf("a: 1\r\nb: 2\rc"))).toEqual({ file: { name: "a.yaml", text: "a: 1\nb: 2\nc" } });
  });
  it("are refused by their size before a byte is read", async () => {
    const large = { name: "x", size: 65_537, text: () => Promise.reject(new Error("was read")) };
    expect(await readFile(large)).toEqual({ refused: "large", kB: 65 });
    expect(await readFile({ ...large, size: 65_536 })).toEqual({ refused: "unreadable", kB: 64 });
  });
  it("are named without letters that hide or turn others", () => {
    expect(shownName("les\u202eson\u0000\u200b.yaml")).toBe("lesson.yaml");
    expect(shownName("n".repeat(300))).toHaveLength(60);
  });
  it.each([
    ["id: 3-03\ntitle: x", "old.yaml", "3-03.yaml"],
    ['title: x\nid: "my-hop" # note', "", "my-hop.yaml"],
    ["title: x", "my first.yml", "my-first.yaml"],
    ["id: ../../etc/passwd", "", "lesson.yaml"],
    ["", "../../etc/passwd", "etc-passwd.yaml"],
    ["", "", "lesson.yaml"],
    ["id: ...", "..", "lesson.yaml"],
  ])("%j from %j is saved as %s", (text, name, saved) => {
    expect(fileNameFor({ text, name })).toBe(saved);
  });
});
