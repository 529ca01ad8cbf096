/** A catalogue of one's own: what is read, what is told, what is refused. */
import { gzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { startImport } from "#core/sky/import/importStars.ts";
import { NAMES_FILE, readOwnNames } from "#core/sky/import/ownNames.ts";
import type { Imported } from "#core/sky/import/types.ts";
import { findByName } from "#core/sky/names/findByName.ts";

const read = (...pieces: readonly string[]): Imported => {
  const work = startImport();
  for (const piece of pieces) work.push(piece);
  return work.finish();
};

/** What the tiles hold, brightest first. */
function starsOf({ files }: Imported) {
  const stars = files
    .filter((file) => file.name.endsWith(".bin"))
    .flatMap(({ name, bytes }) => decodeTileFile(bytes, name).blocks)
    .flatMap((block) =>
      Array.from({ length: block.count }, (_none, i) => ({
        dir: [block.dirs[3 * i]!, block.dirs[3 * i + 1]!, block.dirs[3 * i + 2]!] as const,
        milliMag: block.milliMag[i]!,
        colourBV: block.colourBV[i]!,
      })),
    );
  return stars.sort((a, b) => a.milliMag - b.milliMag);
}

const offArcsec = (dir: readonly [number, number, number], raDeg: number, decDeg: number) =>
  (separationRad(dir, dirFromRadec(raDeg * DEG, decDeg * DEG)) / DEG) * 3600;

/** `rows` places spread over the sky (golden section, textbook), every hundredth spoilt in one of four ways. */
function bigCsv(rows: number): string {
  const spoilt = ["nonsense,10,5,", "10,95,5,", "10,20,,", "10,20,5"];
  const lines = ["RA,Dec,Vmag,B-V"];
  for (let i = 0; i < rows; i++) {
    const decDeg = Math.asin((2 * i + 1) / rows - 1) / DEG;
    if (i % 100 === 99) lines.push(spoilt[((i - 99) / 100) % 4]!);
    else
      lines.push(`${((i * 222.492) % 360).toFixed(5)},${decDeg.toFixed(5)},${(2 + (i % 1000) / 100).toFixed(2)},0.65`);
  }
  return `${lines.join("\n")}\n`;
}

/** In the manner of the example in the IVOA's recommendation VOTable 1.4 (its layout from memory; three stars of our own). */
const VOTABLE = `<?xml version="1.0" encoding="UTF-8"?>
<VOTABLE version="1.4" xmlns="http://www.ivoa.net/xml/VOTable/v1.3">
 <RESOURCE name="myFavouriteStars">
  <COOSYS ID="sys" system="ICRS" epoch="J2025"/>
  <TABLE name="results">
   <DESCRIPTION>Magnitudes &amp; places &lt;V&gt;</DESCRIPTION>
   <FIELD name="Star-Name" ID="col1" ucd="meta.id;meta.main" datatype="char" arraysize="10*"/>
   <FIELD name="alpha1" ID="col2" ucd="pos.eq.ra;meta.main" datatype="float" unit="rad"/>
   <FIELD name="delta1" ID="col3" ucd="pos.eq.dec;meta.main" datatype="float" unit="deg"/>
   <FIELD name="light" ucd="phot.mag;em.opt.V" datatype="float" unit="mag"/>
   <DATA><TABLEDATA>
    <TR><TD>A &#38; B</TD><TD>0.5</TD><TD>41.27</TD><TD>4.10</TD></TR>
    <TR><TD><![CDATA[x<y]]></TD><TD>1.25</TD><TD>-63.85</TD><TD>5.20</TD></TR>
    <TR><TD/><TD>3.0</TD><TD>oops</TD><TD>6.30</TD></TR>
    <TR><TD>N 598</TD><TD>6.0</TD><TD>30.66</TD><TD>10.00</TD></TR>
   </TABLEDATA></DATA>
  </TABLE>
 </RESOURCE>
</VOTABLE>
`;

describe("comma-separated values", () => {
  it("places in degrees, colons, letters and blanks are the same place", () => {
    const rows = ["283.39625,33.0291667", "18:53:35.1,+33:01:45", "18h53m35.1s,33d01m45s", "18 53 35.1,+33 01 45"];
    const stars = starsOf(read(`ra,dec,vmag\n${rows.map((row) => `${row},9`).join("\n")}`));
    expect(stars).toHaveLength(4);
    for (const { dir } of stars) expect(offArcsec(dir, 283.39625, 33.0291667)).toBeLessThan(0.8);
  });

  it("byte order mark, carriage returns, quotes, semicolons, units in headings", () => {
    const text =
      '\uFEFFName;RAJ2000 (deg);DEJ2000 (deg);Vmag;"B-V"\r\n"Nearby; ""the\r\nsecond""";10.5;-20.25;5.43;1.60\r\n';
    const imported = read(text);
    expect(imported.badRows.count).toBe(0);
    const [star] = starsOf(imported);
    expect(star!.milliMag).toBe(5430);
    expect(star!.colourBV).toBeCloseTo(1.6, 1);
    expect(offArcsec(star!.dir, 10.5, -20.25)).toBeLessThan(0.8);
  });

  it("motion carries a place from its epoch to the tiles' (Barnard's star, from memory: +10.36 arcsec a year in declination)", () => {
    const [star] = starsOf(read("ra,dec,mag,pmra,pmdec\n269.45208,4.69336,9.51,-802.8,10362.5\n"));
    const decDeg = Math.asin(star!.dir[2]) / DEG;
    expect((decDeg - 4.69336) * 3600).toBeCloseTo(25 * 10.3625, -0.3);
  });

  it("bad rows are told by line, with what is wrong and how to mend it, and never stop the rest", () => {
    const { stars, badRows, dropped } = read("ra,dec,v\n1,2,3\n\n1,91,3\n400,2,3\n1,2\n1,2,bright\n1,2,13\n1,2,-9\n");
    expect(stars).toBe(1);
    expect(badRows.first.map(({ line }) => line)).toEqual([4, 5, 6, 7, 9]);
    for (const { what, hint } of badRows.first) expect(what.length * hint.length).toBeGreaterThan(100);
    expect(dropped).toContainEqual({ why: "fainter than V 12.5", count: 1 });
  });

  it("20,000 rows with one in a hundred bad: all counted, the first hundred told", () => {
    const { stars, badRows, dropped } = read(bigCsv(20_000));
    expect(stars).toBe(19_800);
    expect(badRows.count).toBe(200);
    expect(badRows.first).toHaveLength(100);
    expect(badRows.first[0]!.line).toBe(101);
    expect(dropped.map(({ count }) => count)).toEqual([50, 50, 50, 50]);
  });

  it("a quote that is never closed costs its own rows, not the memory nor the rest", () => {
    const filler = "1,2,3\n".repeat(20_000);
    const { stars, badRows } = read(`ra,dec,mag\n1,2,3\n"open,2,3\n${filler}`);
    expect(badRows).toMatchObject({ count: 1, first: [{ line: 3 }] });
    expect(stars).toBeGreaterThan(5000);
  });

  it.each([
    ["nothing", "", /empty/],
    ["no column of magnitudes", "ra,dec,name\n1,2,x\n", /magnitude/],
    ["no good row", "ra,dec,mag\nx,2,3\n", /No star/],
    ["a unit nobody knows", "ra [parsec],dec,mag\n1,2,3\n", /unit/],
  ])("a file with %s is refused", (_what, text, message) => {
    expect(() => read(text)).toThrow(message);
  });
});

describe("a file that is no text", () => {
  const csv = "ra,dec,vmag\n10,20,3\n";
  const littleEndian = Buffer.from(`\uFEFF${csv}`, "utf16le");
  it.each([
    ["packed (gzip)", gzipSync(csv)],
    ["UTF-16", littleEndian],
    ["UTF-16, big end first", Buffer.from(littleEndian).swap16()],
    ["zeros", new Uint8Array(99)],
  ])("%s: said so, whatever the pieces", (_, bytes) => {
    const text = new TextDecoder().decode(bytes);
    expect(() => read(text)).toThrow("The file is no plain text");
    expect(() => read(...text)).toThrow("The file is no plain text");
  });
});

describe("VOTable", () => {
  it("fields are known by UCD, units count, a bad cell costs its row", () => {
    const imported = read(VOTABLE);
    expect(imported.badRows).toMatchObject({ count: 1, first: [{ line: 14 }] });
    const stars = starsOf(imported);
    expect(stars.map(({ milliMag }) => milliMag)).toEqual([4100, 5200, 10000]);
    expect(offArcsec(stars[0]!.dir, 0.5 / DEG, 41.27)).toBeLessThan(0.8);
    expect(offArcsec(stars[1]!.dir, 1.25 / DEG, -63.85)).toBeLessThan(0.8);
  });

  const wrap = (inner: string) => `<VOTABLE>${inner}</VOTABLE>`;
  const BASE64 = 'encoding="base64"';
  /** A table with one field more before its places. */
  const stream = (attributes: string, bytes = "", field = 'datatype="int"') =>
    wrap(
      `<TABLE><FIELD name="x" ${field}/>${["ra", "dec", "vmag"].map((name) => `<FIELD name="${name}" datatype="double"/>`).join("")}` +
        `<DATA><BINARY><STREAM ${attributes}>${bytes}</STREAM></BINARY></DATA></TABLE>`,
    );

  it("a long stream comes in pieces of any size, and a number that stands for nothing is none", () => {
    const row = new DataView(new ArrayBuffer(14));
    row.setFloat32(0, 200.5);
    row.setFloat32(4, -30.25);
    row.setInt16(8, 7);
    row.setFloat32(10, 0.5);
    const good = [...new Uint8Array(row.buffer)];
    row.setInt16(8, -99);
    const bad = [...new Uint8Array(row.buffer)];
    const bytes = Array.from({ length: 20_000 }, (_none, i) => (i % 100 === 99 ? bad : good)).flat();
    const fields =
      '<FIELD name="ra" datatype="float"/><FIELD name="dec" datatype="float"/>' +
      '<FIELD name="vmag" datatype="short"><VALUES null="-99"/></FIELD><FIELD name="b-v" datatype="float"/>';
    const text = wrap(
      `<TABLE>${fields}<DATA><BINARY><STREAM ${BASE64}>${Buffer.from(bytes).toString("base64")}</STREAM></BINARY></DATA></TABLE>`,
    );
    const pieces = text.match(/.{1,4093}/g) ?? [];
    const { stars, badRows } = read(...pieces);
    expect(stars).toBe(19_800);
    expect(badRows).toMatchObject({ count: 200, countedBy: "row" });
    expect(badRows.first[0]).toMatchObject({ line: 100, what: "magnitude is missing or no number" });
    expect(read(text)).toEqual(read(...pieces));
  });
  it("in rows of text, too, a field's VALUES name what says no value, whichever way the number is written", () => {
    const field = (name: string, none = "") => `<FIELD name="${name}" datatype="float">${none}</FIELD>`;
    const row = (...cells: readonly string[]) => `<TR>${cells.map((cell) => `<TD>${cell}</TD>`).join("")}</TR>`;
    const none = '<VALUES null="-99"/>';
    const fields = [
      field("ra"),
      field("dec"),
      field("vmag", none),
      field("b-v", none),
      field("id", '<VALUES null="none"/>'),
    ];
    const rows = [
      row("10", "20", "5.00", "-99", "none"),
      row("11", "20", "-99", "0.5", "A"),
      row("12", "20", " -99.00 ", "0.5", "B"),
      // What says no value in another field is a value here.
      row("13", "-99", "6.00", "0.5", "C"),
      row("14", "20", "6.50", "", "-99"),
    ];
    const { stars, badRows, names } = read(
      wrap(`<TABLE>${fields.join("")}<DATA><TABLEDATA>\n${rows.join("\n")}\n</TABLEDATA></DATA></TABLE>`),
    );
    expect(stars).toBe(2);
    expect(names).toEqual({ kept: 1, of: 1 });
    expect(badRows.first.map(({ line, what }) => [line, what])).toEqual([
      [3, "magnitude is missing or no number"],
      [4, "magnitude is missing or no number"],
      [5, "declination lies beyond 90 degrees"],
    ]);
  });
  it.each([
    ["entities that grow", `<!DOCTYPE a [<!ENTITY b "bb"><!ENTITY c "&b;&b;">]>${VOTABLE}`, /declarations/],
    ["an entity of nobody's", wrap("&c;"), /entity/],
    ["a huge attribute", wrap(`<TABLE name="${"x".repeat(70_000)}"/>`), /65,536/],
    ["a huge text", wrap("x".repeat(70_000)), /65,536/],
    ["a deep nest", wrap("<a>".repeat(100_000)), /nested/],
    ["its end cut off", VOTABLE.slice(0, -60), /cut off|middle/],
    ["tags crossed", wrap("<a><b></a></b>"), /closes/],
    ["its bytes elsewhere", stream('href="http://example.org/stars.bin"'), /another file/],
    ["packed bytes", stream('encoding="gzip"'), /encoded as "gzip"/],
    ["a cell of two thousand million bytes", stream(BASE64, "f////w==", 'datatype="char" arraysize="*"'), /65,536/],
    ["a cell of less than no bytes", stream(BASE64, "/////w==", 'datatype="char" arraysize="*"'), /65,536/],
    ["a field of a size that nobody reads", stream(BASE64, "", 'datatype="int" arraysize="3x*"'), /arraysize "3x\*"/],
    ["a field of a huge size", stream(BASE64, "", 'datatype="int" arraysize="9999999"'), /65,536/],
    ["a field of no known kind", stream(BASE64, "", 'datatype="quad"'), /unknown datatype "quad"/],
    ["bytes that end within a row", stream(BASE64, "AAAA"), /middle of row 1/],
    ["a table as FITS", wrap("<TABLE><DATA><FITS>"), /FITS/],
    ["another root", "<html></html>", /no VOTable/],
    ["an older frame", wrap('<COOSYS system="eq_FK4" equinox="B1950"/>'), /eq_FK4/],
  ])("a file with %s is refused", (_what, text, message) => {
    expect(() => read(text)).toThrow(message);
  });
});

describe("names", () => {
  const namesOf = ({ files }: Imported) => files.find(({ name }) => name === NAMES_FILE);

  it("are kept, brightest first, without letters that hide or turn, and found again", () => {
    const imported = read("name,ra,dec,mag\nFaint one,1,2,9\n\u202eBright\u0007 one,3,4,5\n,5,6,7\n");
    expect(imported.names).toEqual({ kept: 2, of: 2 });
    const stars = readOwnNames(namesOf(imported)!.bytes);
    expect(stars.map(({ proper, magV }) => [proper, magV])).toEqual([
      ["Bright one", 5],
      ["Faint one", 9],
    ]);
    expect(findByName("brihgt one", { stars, segments: [], figures: [] }, [])[0]?.name).toBe("Bright one");
    expect(namesOf(read("ra,dec,mag\n1,2,3\n"))).toBeUndefined();
  });

  it("of very many the brightest are kept, and it is said of how many", () => {
    const rows = Array.from({ length: 45_000 }, (_none, i) => `S${i},${i / 125},0,${(12 - i / 5000).toFixed(3)}`);
    const imported = read(`id,ra,dec,mag\n${rows.join("\n")}\n`);
    expect(imported.names).toEqual({ kept: 20_000, of: 45_000 });
    const [first, last] = [0, 19_999].map((i) => readOwnNames(namesOf(imported)!.bytes)[i]!.magV);
    expect(first).toBeCloseTo(3, 1);
    expect(last).toBeCloseTo(7, 1);
  });

  it.each(["", "{}", '{"names":[["a",1,1,1,5]]}', '{"names":[["a",1,0,0,"5"]]}', '{"names":[["a",1,0,0]]}'])(
    "a file changed to %s is refused",
    (text) => {
      expect(() => readOwnNames(new TextEncoder().encode(text))).toThrow(/names cannot be read/);
    },
  );
});

describe("pieces", () => {
  const quoted = 'ra,dec,mag,name\r\n1,2,3,"a ""b""\r\nc"\r\n"4","5",6,é\r\nx,1,2,\r\n7,8,9,"open\r\n';
  it.each([
    ["CSV", quoted],
    ["VOTable", VOTABLE],
    ["rows by the hundred", bigCsv(200)],
  ])("cut anywhere, even within a letter, give the same: %s", (_what, text) => {
    const bytes = new TextEncoder().encode(text);
    const whole = read(text);
    fc.assert(
      fc.property(fc.array(fc.nat(bytes.length), { maxLength: 40 }), (cuts) => {
        const decoder = new TextDecoder();
        const ends = [0, ...cuts.sort((a, b) => a - b), bytes.length];
        const pieces = ends.slice(1).map((end, i) => decoder.decode(bytes.subarray(ends[i], end), { stream: true }));
        expect(read(...pieces)).toEqual(whole);
      }),
      { numRuns: 6 },
    );
    if (text.length < 2000) expect(read(...text)).toEqual(whole);
  });
});
