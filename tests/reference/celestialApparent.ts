/** What the product leaves out on purpose, for comparison with published apparent places. */
import { BaryState, Body } from "astronomy-engine";
import { equatorialOfDateFromIcrs, hourAngleFromDir } from "#core/celestial/frames.ts";
import { astroTime, greenwichApparentSiderealDeg } from "#core/celestial/time.ts";
import { DEG, dirFromRadec, normalise } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

const LIGHT_AU_PER_DAY = 173.1446326846693;
const GREENWICH = { latDeg: 0, lonDeg: 0, heightM: 0 };

/** An ICRS direction on the true equator and equinox of date. */
export function trueOfDate(dir: Dir, utcMs: number): Dir {
  const { hourAngleRad, decRad } = hourAngleFromDir(equatorialOfDateFromIcrs(GREENWICH, utcMs), dir);
  return dirFromRadec(greenwichApparentSiderealDeg(utcMs) * DEG - hourAngleRad, decRad);
}

/** The same with annual aberration, to first order (0.001"). */
export function apparentOfDate(dir: Dir, utcMs: number): Dir {
  const { vx, vy, vz } = BaryState(Body.Earth, astroTime(utcMs));
  const [x, y, z] = dir;
  return trueOfDate(
    normalise([x + vx / LIGHT_AU_PER_DAY, y + vy / LIGHT_AU_PER_DAY, z + vz / LIGHT_AU_PER_DAY]),
    utcMs,
  );
}
