/** The shapes of the verbs, their exit codes and their errors. */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { SOUND } from "../lesson/sound.ts";
import { faintward, jsonOf, repo } from "./faintward.ts";

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "faintward-cli-"));
});
afterAll(() => rmSync(folder, { recursive: true }));

type ErrorJson = {
  error: { code: string; message: string; hint: string; file?: string; line?: number; column?: number };
};

describe("what cannot be used ends with 2", () => {
  it.each([
    [[], "ARGUMENTS", /no verb/],
    [["stras"], "ARGUMENTS", /did you mean stars\?/],
    [["route", "M 27"], "ARGUMENTS", /unknown verb route/],
    [["stars", "--ra=10", "--dec", "-12", "--radius=1", "--limit=6"], "ARGUMENTS", /--dec=-12/],
    [["stars", "--dec=5", "--radius=1", "--limit=6"], "ARGUMENTS", /--ra is missing/],
    [["stars", "--ra=10", "--dec=5", "--radius=200", "--limit=6"], "ARGUMENTS", /from 0 to 180/],
    [["stars", "--ra=10", "--dec=5", "--radius=1", "--limit=6", "--sky=A B"], "ARGUMENTS", /seed word/],
    [["stars", "--ra=10", "--dec=5", "--radius=180", "--limit=15", "--sky=sallow"], "ARGUMENTS", /smaller radius/],
    [["name"], "ARGUMENTS", /name is missing/],
    [["place", "M 27", "--site=50,0"], "ARGUMENTS", /--time is missing/],
    [["place", "--site=50,0"], "ARGUMENTS", /--ra is missing/],
    [
      ["place", "M 27", "--ra=1", "--dec=2", "--site=50,0", "--time=2027-01-01T00:00:00Z"],
      "ARGUMENTS",
      /give one of them/,
    ],
    [["place", "Nowhere at all", "--site=50,0", "--time=2027-01-01T00:00:00Z"], "NAME", /nothing bears/],
    [["view", "--ra=1", "--dec=2", "--limit=5"], "ARGUMENTS", /instrument is missing/],
    [["view", "--ra=1", "--dec=2", "--gear=finder", "--limit=5"], "ARGUMENTS", /no instrument finder/],
    [["view", "--ra=1", "--dec=2", "--gear=finder-9x50", "--field=5", "--limit=5"], "ARGUMENTS", /--gear and --field/],
    [["view", "--ra=1", "--dec=2", "--gear=newton200-48x", "--limit=5"], "ARGUMENTS", /turns with altitude/],
    [
      ["view", "--ra=1", "--dec=2", "--gear=finder-9x50", "--limit=5", "--image=odd"],
      "ARGUMENTS",
      /correct, inverted, mirrored/,
    ],
    [["lesson", "nowhere.yaml"], "FILE", /no such file/],
    [["lesson", "."], "FILE", /it is a folder/],
    [["lesson", "x.yaml", "--format=xml"], "ARGUMENTS", /text, json, sarif/],
    [["score", "package.json"], "RECORD", /package\.json/],
    [["sky", "paint"], "ARGUMENTS", /sky build/],
    [["sky", "import", "src", "--as=no-such-sky"], "FILE", /it is a folder/],
    [["sky", "build", "src", "nowhere"], "INPUT", /suppl_1\.dat is missing/],
  ])("%j", (args, code, says) => {
    const { exit, out, err } = faintward(
      ...args.map((arg) => (arg === "package.json" || arg === "src" ? repo(arg) : arg)),
      "--json",
    );
    const { error } = JSON.parse(out) as ErrorJson;
    expect(exit).toBe(2);
    expect(error.code).toBe(code);
    expect(`${error.message}; ${error.hint}`).toMatch(says);
    expect(err).toBe(`faintward: ${error.message}; ${error.hint}\n`);
  });

  it("without --json nothing stands on standard output", () => {
    const { exit, out, err } = faintward("name");
    expect([exit, out]).toEqual([2, ""]);
    expect(err.split("\n")).toHaveLength(2);
  });
});

describe("help", () => {
  it.each([[["help"]], [["--help"]], [["name", "--help"]]])("%j lists every verb", (args) => {
    const { exit, out } = faintward(...args);
    expect(exit).toBe(0);
    for (const verb of ["stars", "name", "place", "view", "lesson", "score", "sky build"])
      expect(out).toContain(`faintward ${verb} `);
  });
});

describe("name", () => {
  type Names = {
    matches: {
      name: string;
      kind: string;
      raDeg: number;
      decDeg: number;
      magV: number;
      otherNames: string[];
      constellation: string;
    }[];
  };

  it("finds a star by its letter", () => {
    const [best] = jsonOf<Names>("name", "gamma Sge").matches;
    expect(best).toMatchObject({ kind: "star", magV: 3.5, constellation: "Sagitta" });
    expect(best!.raDeg).toBeCloseTo(299.69, 2);
    expect(best!.decDeg).toBeCloseTo(19.492, 2);
    expect(best!.otherNames).toContain("HIP 98337");
  });
  it("finds an object, its name in several words", () => {
    expect(jsonOf<Names>("name", "M", "27").matches[0]).toMatchObject({
      name: "M 27",
      kind: "planetaryNebula",
      constellation: "Vulpecula",
    });
  });
  it("finds what a practice sky has", () => {
    expect(jsonOf<Names>("name", "Orlo", "--sky=sallow").matches[0]).toMatchObject({
      name: "Orlo",
      kind: "star",
      constellation: "Billhook",
    });
    const [double] = jsonOf<Names>("name", "Sallow 1296", "--sky=sallow").matches;
    expect(double).toMatchObject({ name: "Sallow 1296", kind: "doubleStar", magV: 5.63 });
    const [figure] = jsonOf<Names>("name", "cake", "tin", "--sky=sallow").matches;
    expect(figure).toMatchObject({ name: "Cake Tin", kind: "asterism", magV: 3.3, otherNames: ["Sallow 1447"] });
    const shown = { visible: true, band: "seen" };
    const look = ["--sky=sallow", "--gear=finder-9x50", "--darkness=21"] as const;
    expect(jsonOf("see", "Sallow 1296", ...look)).toMatchObject(shown);
    expect(jsonOf("see", "Cake Tin", ...look)).toMatchObject(shown);
  });
  it("says no with 1", () => {
    expect(faintward("name", "Nowhere", "--json")).toMatchObject({ exit: 1, out: '{"matches":[]}\n', err: "" });
    expect(faintward("name", "Nowhere").out).toBe('Nothing bears the name "Nowhere".\n');
    expect(faintward("name", "Jupiter").out).toMatch(/^Jupiter moves among the stars: add --time/);
  });
});

describe("what moves is named as well", () => {
  const night = ["--site=-33.9,18.4", "--time=1969-07-20T20:17:00Z"];
  type Place = { raDeg: number; decDeg: number; altitudeDeg: number; constellation: string };
  const placed = (...args: string[]) => jsonOf<Place>("place", ...args, ...night);

  it("a planet stands where its name was found, and is spelled as its constellation is", () => {
    const [best] = jsonOf<{ matches: Place[] }>("name", "Jupiter", night[1]!).matches;
    const jupiter = placed("Jupiter");
    expect(jupiter.raDeg).toBeCloseTo(best!.raDeg, 2);
    expect(jupiter).toMatchObject({ constellation: "Virgo" });
  });
  it("the Moon is seen from the site: up to a degree from where the Earth's middle has it", () => {
    const [best] = jsonOf<{ matches: Place[] }>("name", "Moon", night[1]!).matches;
    const moon = placed("Moon");
    const apart = Math.hypot(
      (moon.raDeg - best!.raDeg) * Math.cos((moon.decDeg * Math.PI) / 180),
      moon.decDeg - best!.decDeg,
    );
    // Near the horizon the parallax is nearly the whole 0.95 degrees.
    expect(moon.altitudeDeg).toBeLessThan(20);
    expect(apart).toBeGreaterThan(0.85);
    expect(apart).toBeLessThan(1.02);
  });
  it("a planet can be looked at, the Sun never", () => {
    const at = ["--site=50,0", "--time=2027-10-01T22:00:00Z", "--gear=finder-9x50", "--darkness=21"];
    expect(jsonOf("see", "Neptune", ...at)).toMatchObject({ visible: true, how: "direct" });
    const { exit, err } = faintward("see", "Sun", ...at);
    expect(exit).toBe(2);
    expect(err).toContain("never point an instrument at it");
  });
  it("a double star has a place, and a place under a practice sky one of its own constellations", () => {
    expect(placed("61 Cyg").raDeg).toBeCloseTo(316.7, 0);
    expect(placed("Orlo", "--sky=sallow").constellation).toBe("Billhook");
  });
});

describe("a lesson's sky and night", () => {
  const file = repo("tests/unit/lesson/comet.yaml");
  const lesson = `--lesson=${file}`;
  type Place = { raDeg: number; decDeg: number; altitudeDeg: number; constellation: string };

  it("has the bodies that the lesson brings along, by name", () => {
    const [best] = jsonOf<{ matches: { kind: string; raDeg: number }[] }>("name", "comet whin", lesson).matches;
    expect(best).toMatchObject({ kind: "comet", constellation: "Hercules" });
    expect(faintward("name", "comet whin").exit).toBe(1);
    expect(jsonOf<{ matches: object[] }>("name", "Saturn", lesson).matches[0]).toMatchObject({ kind: "body" });
  });
  it("gives site and time where the call has none", () => {
    const own = jsonOf<Place>("place", "Comet Whin", lesson);
    const said = jsonOf<Place>("place", "Comet Whin", lesson, "--site=50,0,250", "--time=2027-08-31T21:00:00Z");
    expect(own).toEqual(said);
    expect(own.constellation).toBe("Hercules");
    expect(own.altitudeDeg).toBeGreaterThan(20);
  });
  it("has a comet where it stands at the time of the call", () => {
    const later = jsonOf<Place>("place", "Comet Whin", lesson, "--time=2027-09-30T21:00:00Z");
    const [named] = jsonOf<{ matches: Place[] }>("name", "comet whin", lesson, "--time=2027-09-30T21:00:00Z").matches;
    expect(Math.abs(later.raDeg - jsonOf<Place>("place", "Comet Whin", lesson).raDeg)).toBeGreaterThan(1);
    expect(named!.raDeg).toBeCloseTo(later.raDeg, 4);
  });
  it("tells whether the comet is seen, as a glow, and the minor planet as a point", () => {
    type See = { marginMag: number; band: string };
    expect(jsonOf<See>("see", "Comet Whin", lesson, "--gear=newton200-48x").band).toBe("seen");
    expect(jsonOf<See>("see", "Heather", lesson, "--gear=newton200-48x").band).toBe("seen");
    expect(JSON.parse(faintward("see", "Heather", lesson, "--eye", "--json").out)).toMatchObject({ band: "not" });
  });
  it.each([
    [["name", "x", "--lesson=nowhere.yaml"], "FILE", /no such file/],
    [["name", "x", lesson, "--sky=sallow"], "ARGUMENTS", /keep one of them/],
    [["see", "x", `--lesson=${repo("package.json")}`, "--eye"], "LESSON", /mend the lesson first/],
  ])("%j cannot be used", (args, code, says) => {
    const { exit, out } = faintward(...args, "--json");
    const { error } = JSON.parse(out) as ErrorJson;
    expect([exit, error.code]).toEqual([2, code]);
    expect(`${error.message}; ${error.hint}`).toMatch(says);
  });
});

describe("lesson", () => {
  it("has nothing to say of the lessons that come along", () => {
    const files = readdirSync(repo("lessons"))
      .filter((name) => name.endsWith(".yaml"))
      .map((name) => repo(`lessons/${name}`));
    expect(faintward("lesson", ...files, "--json")).toEqual({ exit: 0, out: "[]\n", err: "" });
  });

  it("tells every finding with its place", () => {
    const file = join(folder, "bad.yaml");
    writeFileSync(file, SOUND.replace("minutes: 5", "minutes: 500").replace("level: C", "level: X"));
    const { exit, out } = faintward("lesson", file);
    expect(exit).toBe(1);
    expect(out).toContain(`${file}:7:10 error FW013 minutes must be at most 60`);
    const findings = jsonOf<
      { file: string; line: number; column: number; severity: string; code: string; message: string; hint: string }[]
    >("lesson", file);
    expect(findings.map(({ line, column, code }) => [line, column, code])).toEqual([
      [7, 10, "FW013"],
      [25, 8, "FW014"],
    ]);
    expect(Object.keys(findings[0]!)).toEqual(["file", "line", "column", "severity", "code", "message", "hint"]);
  });

  it("writes SARIF with the same places", () => {
    const file = join(folder, "bad.yaml");
    const { exit, out } = faintward("lesson", file, "--format=sarif");
    const { version, runs } = JSON.parse(out) as {
      version: string;
      runs: {
        tool: { driver: { rules: { id: string }[] } };
        results: {
          ruleId: string;
          ruleIndex: number;
          level: string;
          locations: { physicalLocation: { region: unknown } }[];
        }[];
      }[];
    };
    const [run] = runs;
    expect([exit, version]).toEqual([1, "2.1.0"]);
    expect(run!.results.map(({ ruleId, level }) => `${ruleId} ${level}`)).toEqual(["FW013 error", "FW014 error"]);
    expect(run!.results[0]!.locations[0]!.physicalLocation.region).toEqual({ startLine: 7, startColumn: 10 });
    for (const { ruleId, ruleIndex } of run!.results) expect(run!.tool.driver.rules[ruleIndex]!.id).toBe(ruleId);
  });
});

describe("sky build", () => {
  it("makes the files of the sky from a raw folder", () => {
    const out = join(folder, "sky");
    const built = jsonOf<{ files: number; bytes: number; stars: number; dropped: { why: string; count: number }[] }>(
      "sky",
      "build",
      repo("tests/reference/data/tycho2-excerpt"),
      out,
    );
    expect(built).toMatchObject({ stars: 1816 });
    expect(readdirSync(out).filter((name) => name.endsWith(".bin"))).toHaveLength(built.files);
    expect(built.dropped.reduce((sum, { count }) => sum + count, 0) + built.stars).toBe(2000);
  });
});
