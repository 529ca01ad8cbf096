import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { starsWithin } from "#core/sky/catalogue/starsWithin.ts";
import { decodeTileFile } from "#core/sky/catalogue/tileFile.ts";

/**
 * The fifty brightest stars of the sky: J2000 place to a few arcminutes, V and B-V, from memory of the usual handbooks
 * (Bright Star Catalogue, 5th ed., and lists made from it). Doubles that no eye parts carry their joint light.
 */
const HANDBOOK = `
Sirius          101.29 -16.72 -1.46  0.00
Canopus          95.99 -52.70 -0.72  0.15
Rigil Kentaurus 219.90 -60.83 -0.27  0.71
Arcturus        213.92  19.18 -0.04  1.23
Vega            279.23  38.78  0.03  0.00
Capella          79.17  46.00  0.08  0.80
Rigel            78.63  -8.20  0.12 -0.03
Procyon         114.83   5.22  0.38  0.42
Achernar         24.43 -57.24  0.46 -0.16
Betelgeuse       88.79   7.41  0.50  1.85
Hadar           210.96 -60.37  0.61 -0.23
Altair          297.70   8.87  0.77  0.22
Acrux           186.65 -63.10  0.77 -0.24
Aldebaran        68.98  16.51  0.85  1.54
Antares         247.35 -26.43  0.96  1.83
Spica           201.30 -11.16  0.98 -0.23
Pollux          116.33  28.03  1.14  1.00
Fomalhaut       344.41 -29.62  1.16  0.09
Mimosa          191.93 -59.69  1.25 -0.23
Deneb           310.36  45.28  1.25  0.09
Regulus         152.09  11.97  1.35 -0.11
Adhara          104.66 -28.97  1.50 -0.21
Castor          113.65  31.89  1.58  0.03
Shaula          263.40 -37.10  1.63 -0.22
Gacrux          187.79 -57.11  1.63  1.59
Bellatrix        81.28   6.35  1.64 -0.22
Elnath           81.57  28.61  1.65 -0.13
Miaplacidus     138.30 -69.72  1.68  0.00
Alnilam          84.05  -1.20  1.70 -0.19
Alnair          332.06 -46.96  1.74 -0.13
Alioth          193.51  55.96  1.77 -0.02
Alnitak          85.19  -1.94  1.77 -0.21
Gamma Velorum   122.38 -47.34  1.78 -0.22
Dubhe           165.93  61.75  1.79  1.07
Mirfak           51.08  49.86  1.79  0.48
Wezen           107.10 -26.39  1.84  0.68
Kaus Australis  276.04 -34.38  1.85 -0.03
Avior           125.63 -59.51  1.86  1.28
Alkaid          206.89  49.31  1.86 -0.19
Sargas          264.33 -43.00  1.87  0.40
Menkalinan       89.88  44.95  1.90  0.03
Atria           252.17 -69.03  1.92  1.44
Alhena           99.43  16.40  1.93  0.00
Peacock         306.41 -56.74  1.94 -0.20
Delta Velorum   131.18 -54.71  1.96  0.04
Mirzam           95.67 -17.96  1.98 -0.23
Alphard         141.90  -8.66  1.98  1.44
Algieba         154.99  19.84  1.98  1.14
Hamal            31.79  23.46  2.00  1.15
Polaris          37.95  89.26  2.02  0.60`;

const rows = HANDBOOK.trim()
  .split("\n")
  .map((line) => {
    const [, name, ...numbers] = /^(.+?)\s+(\S+)\s+(\S+)\s+(\S+)\s+(\S+)$/.exec(line)!;
    const [raDeg, decDeg, magV, colourBV] = numbers.map(Number);
    return { name: name!, raDeg: raDeg!, decDeg: decDeg!, magV: magV!, colourBV: colourBV! };
  });

const bytes = readFileSync(new URL("../../assets/sky/stars-0.bin", import.meta.url));
const { blocks } = decodeTileFile(bytes, "stars-0.bin");

test.each(rows)("$name: V $magV to 0.1, B-V $colourBV to 0.15", ({ raDeg, decDeg, magV, colourBV }) => {
  // Alpha Centauri has moved 1.6 arcminutes since 2000; components within 30 arcsec of the brightest shine as one.
  const near = starsWithin({ blocks }, dirFromRadec(raDeg * DEG, decDeg * DEG), 0.05 * DEG, 4500);
  const brightest = near[0]!;
  const together = starsWithin({ blocks }, brightest.dir, (30 / 3600) * DEG, 4500);
  const light = together.reduce((sum, star) => sum + 10 ** (-0.4 * (star.milliMag / 1000)), 0);
  expect(Math.abs(-2.5 * Math.log10(light) - magV)).toBeLessThanOrEqual(0.1);
  expect(Math.abs(brightest.colourBV - colourBV)).toBeLessThanOrEqual(0.15);
});

test("no star of the catalogue is as bright as these without being one of them", () => {
  const dirs = rows.map(({ raDeg, decDeg }) => dirFromRadec(raDeg * DEG, decDeg * DEG));
  const known = new Set(dirs.flatMap((dir) => starsWithin({ blocks }, dir, 0.05 * DEG, 6500).map((star) => star.id)));
  const bright = starsWithin({ blocks }, [0, 0, 1], Math.PI, 1950);
  expect(bright.length).toBeGreaterThan(40);
  for (const star of bright) expect(known.has(star.id)).toBe(true);
});
