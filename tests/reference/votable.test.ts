/**
 * VOTable's two binary forms, against files that a general-purpose library wrote: the same five rows by astropy 8.0.1
 * (`io.votable`, format "binary" and "binary2"). Row 3 has a declination of 95 degrees, row 4 no magnitude, row 2 no colour.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { DEG, dirFromRadec, separationRad } from "#core/celestial/vector.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { NEUTRAL_BV } from "#core/sky/catalogue/tileFormat.ts";
import { startImport } from "#core/sky/import/importStars.ts";

const textOf = (name: string) => readFileSync(join(import.meta.dirname, "data", "votable", name), "utf8");

function imported(pieces: Iterable<string>) {
  const work = startImport();
  for (const piece of pieces) work.push(piece);
  return work.finish();
}

/** Place in degrees (J2000, no motion), V and B-V as they were given to the library; where no colour is known, a tile holds the neutral one. */
const GIVEN = [
  [10.25, 20.5, 4.5, 0.62],
  [123.456, -77.125, 8.25, NEUTRAL_BV],
  [270, -0.25, 11.75, -0.1],
] as const;
/** Sixteen bits an axis of a tile, and five of a colour: what the tiles keep of it. */
const TILE_ARCSEC = 0.6;
const TILE_COLOUR = 0.06;

describe.each(["binary.vot", "binary2.vot"])("%s", (name) => {
  it("gives the stars that were written, brightest first", () => {
    const { files, badRows, stars } = imported([textOf(name)]);
    expect(stars).toBe(3);
    expect(badRows).toMatchObject({ count: 2, countedBy: "row" });
    expect(badRows.first.map(({ line, what }) => [line, what])).toEqual([
      [3, "declination lies beyond 90 degrees"],
      [4, "magnitude is missing or no number"],
    ]);
    const found = files
      .filter((file) => file.name.endsWith(".bin"))
      .flatMap((file) => decodeTileFile(file.bytes, file.name).blocks)
      .flatMap((block) => Array.from({ length: block.count }, (_none, i) => ({ block, i })))
      .sort((a, b) => a.block.milliMag[a.i]! - b.block.milliMag[b.i]!);
    for (const [n, [raDeg, decDeg, magV, colourBV]] of GIVEN.entries()) {
      const { block, i } = found[n]!;
      const dir = [block.dirs[3 * i]!, block.dirs[3 * i + 1]!, block.dirs[3 * i + 2]!] as const;
      const offArcsec = (separationRad(dir, dirFromRadec(raDeg * DEG, decDeg * DEG)) / DEG) * 3600;
      expect(offArcsec).toBeLessThan(TILE_ARCSEC);
      expect(block.milliMag[i]).toBe(Math.round(magV * 1000));
      expect(Math.abs(block.colourBV[i]! - colourBV)).toBeLessThan(TILE_COLOUR);
    }
  });

  it("is the same cut anywhere, down to single letters", () => {
    const text = textOf(name);
    expect(imported(text)).toEqual(imported([text]));
  });

  it("cut off, or with a letter changed to none of base64, is refused whole", () => {
    const text = textOf(name);
    expect(() => imported([text.replace(/.{24}\s*<\/STREAM>/s, "</STREAM>")])).toThrow(/end in the middle/);
    expect(() => imported([text.replace(/(<STREAM[^>]*>\s*.{9})./, "$1!")])).toThrow(/no base64/);
  });
});
