/** Which of a practice sky's pairs its catalogue lists as double stars: bright ones that a small telescope parts. */
import { roundHalfUp } from "#core/celestial/exactMath.ts";
import { combinedMag } from "#core/celestial/magnitude.ts";
import { DEG, dot, positionAngleRad, separationRad } from "#core/celestial/vector.ts";
import type { DoubleMeasure, SkyObject } from "#core/seams/index.ts";
import { brightPairs, type StarPair } from "./companions.ts";
import type { SkyPlan } from "./plan.ts";

/** The brighter star is no fainter than this, and the other not by more than so much. */
const FAINTEST_MILLIMAG = 6000;
const MOST_APART_MILLIMAG = 3500;
/** 100 mm of aperture part equal stars at 1.16" (Dawes's rule, from memory). */
const NEAREST_ARCSEC = 1.4;
/** The farther a companion is below its star, the farther out it must stand to be made out (common practice, no source). */
const ARCSEC_A_MAG = 1.2;
/** Practice skies stand still: their places, and so their pairs, are of J2000. */
const EPOCH_YEAR = 2000;
const COLOUR = { blue: 0.1, orange: 1.1 } as const;
const EVEN_MAG = 0.7;

export type ListedDouble = Omit<SkyObject, "id" | "names" | "constellation">;

/** The double stars of a sky, tile by tile; where the first hops go none is listed. */
export function listedDoubles({ frame, practised }: Pick<SkyPlan, "frame" | "practised">): ListedDouble[] {
  return brightPairs(frame)
    .filter((pair) => isShowpiece(pair) && dot(practised.centre, pair.primary.dir) <= practised.cosRadius)
    .map(doubleOf);
}

function isShowpiece({ primary, companion }: StarPair): boolean {
  const fainterBy = companion.milliMag - primary.milliMag;
  if (primary.milliMag > FAINTEST_MILLIMAG || fainterBy > MOST_APART_MILLIMAG) return false;
  return separationArcsecOf({ primary, companion }) >= NEAREST_ARCSEC + (ARCSEC_A_MAG * fainterBy) / 1000;
}

const toTenth = (value: number) => roundHalfUp(10 * value) / 10;
const separationArcsecOf = ({ primary, companion }: StarPair) =>
  toTenth((separationRad(primary.dir, companion.dir) / DEG) * 3600);

function doubleOf(pair: StarPair): ListedDouble {
  const { primary, companion } = pair;
  const magV = [toTenth(primary.milliMag / 1000), toTenth(companion.milliMag / 1000)] as const;
  const angleRad = positionAngleRad(primary.dir, companion.dir);
  const positionAngleDeg = roundHalfUp(angleRad / DEG + 360) % 360;
  const double: DoubleMeasure = {
    separationArcsec: separationArcsecOf(pair),
    positionAngleDeg,
    magV,
    epochYear: EPOCH_YEAR,
  };
  const sizeArcmin = double.separationArcsec / 60;
  return {
    kind: "doubleStar",
    dir: primary.dir,
    magV: roundHalfUp(100 * combinedMag(magV)) / 100,
    majorArcmin: sizeArcmin,
    minorArcmin: sizeArcmin,
    axisDeg: positionAngleDeg % 180,
    profile: "members",
    looks: looksOf(pair, double.separationArcsec),
    double,
  };
}

function hueOf(colourBV: number): string {
  if (colourBV < COLOUR.blue) return "blue-white";
  return colourBV > COLOUR.orange ? "orange" : "pale yellow";
}

/** As the eye meets it: how far apart, how alike, and which colours. */
function looksOf({ primary, companion }: StarPair, separationArcsec: number): string {
  const apart = separationArcsec < 4 ? "close" : separationArcsec < 20 ? "clear" : "wide";
  const [one, other] = [hueOf(primary.colourBV), hueOf(companion.colourBV)];
  const hues = one === other ? `both ${one}` : `${one} and ${other}`;
  const isEven = companion.milliMag - primary.milliMag < 1000 * EVEN_MAG;
  return isEven ? `A ${apart} even pair, ${hues}.` : `A ${apart} pair, the second star fainter: ${hues}.`;
}
