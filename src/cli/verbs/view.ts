/** `view`: the stars of a field as the eye gets them. */
import { altAzFromDir, horizonFromIcrs, zenithDir } from "#core/celestial/frames.ts";
import { mulMatVec } from "#core/celestial/matrix.ts";
import { gnomonic } from "#core/celestial/projection.ts";
import { DEG, dirFromRadec, separationRad, TWO_PI } from "#core/celestial/vector.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, Gear, Orientation } from "#core/seams/index.ts";
import { parseArgs } from "../args.ts";
import { GEAR_OPTIONS, gearFrom, type Image, imageOf } from "../gearFrom.ts";
import type { Verb } from "../io.ts";
import { openSky, starsIn } from "../skies.ts";
import { starJson } from "../starJson.ts";
import { table } from "../table.ts";
import { UsageError } from "../usageError.ts";
import { angleDegOf, needed, numberOf, type Place, placeFrom, rounded, siteOf, utcMsOf } from "../values.ts";

const OPTIONS = {
  ra: "value",
  dec: "value",
  ...GEAR_OPTIONS,
  limit: "value",
  site: "value",
  time: "value",
  turn: "value",
  sky: "value",
} as const;

const BY_IMAGE: Readonly<Record<Image, Orientation>> = {
  correct: { parity: 1, rotationRad: 0 },
  inverted: { parity: 1, rotationRad: Math.PI },
  mirrored: { parity: -1, rotationRad: 0 },
};
/** Nearer to the zenith than this nothing is "up" any more: north takes its place. */
const AT_ZENITH_RAD = 1e-7;

/** What is up in the direct view, and how high the tube points; without an observer north is up and the height unknown. */
type Upright = { readonly up: Dir; readonly altitudeRad: number | null };

function uprightAt(centre: Place, site: string | undefined, time: string | undefined): Upright {
  const north = dirFromRadec(centre.raDeg * DEG, (centre.decDeg + 90) * DEG);
  if (site === undefined && time === undefined) return { up: north, altitudeRad: null };
  const horizon = horizonFromIcrs(
    siteOf(needed("site", site, "50,0,250")),
    utcMsOf(needed("time", time, "2027-08-31T21:00:00Z")),
  );
  const zenith = zenithDir(horizon);
  const { altRad } = altAzFromDir(horizon, centre.dir);
  return { up: separationRad(zenith, centre.dir) < AT_ZENITH_RAD ? north : zenith, altitudeRad: altRad };
}

/** The image of the gear; --image says it outright. An image that changes with altitude needs an observer. */
function orientationOf(gear: Gear, image: Image | undefined, altitudeRad: number | null): Orientation {
  if (image) return BY_IMAGE[image];
  if (gear.path === "direct" || gear.path === "halfTurn") return imageOrientation(gear, 0, 0, "upright");
  if (gear.path !== "newtonian" && gear.clockDeg === 0) return imageOrientation(gear, altitudeRad ?? 1, 0, "upright");
  if (altitudeRad === null)
    throw new UsageError(
      "ARGUMENTS",
      `the image of ${gear.id} turns with altitude`,
      "add --site and --time, or --image",
    );
  return imageOrientation(gear, altitudeRad, 0, "upright");
}

/** `turnDeg` clockwise on top, brought to [0, 2 pi). */
function turned({ parity, rotationRad }: Orientation, turnDeg: number): Orientation {
  const whole = (rotationRad + turnDeg * DEG) % TWO_PI;
  return { parity, rotationRad: whole < 0 ? whole + TWO_PI : whole };
}

export const view: Verb = {
  what: "the stars of a field as an instrument shows them",
  usage:
    "view --ra=RA --dec=DEC --gear=ID|--aperture=MM --magnification=X --field=DEG [--image=correct|inverted|mirrored] --limit=MAG [--site=LAT,LON --time=UTC] [--turn=DEG] [--sky=catalogue|OWN|SEED]",
  async run(args, io) {
    const { options } = parseArgs(args, OPTIONS, { least: 0, most: 0, what: "" });
    const centre = placeFrom(options.ra, options.dec);
    const gear = gearFrom(options);
    const image = imageOf(options.image);
    const limitMag = numberOf("limit", needed("limit", options.limit, "9.5"), -2, 20, "magnitudes");
    const turnDeg = options.turn === undefined ? 0 : angleDegOf("turn", options.turn, -360, 360);
    const { up, altitudeRad } = uprightAt(centre, options.site, options.time);
    const orientation = turned(orientationOf(gear, image, altitudeRad), turnDeg);
    const frame = viewFromIcrs(centre.dir, up, orientation, new Float64Array(9));
    const sky = openSky(options.sky, io);
    const { stars } = await starsIn(sky, centre.dir, (gear.fieldDeg / 2) * DEG, limitMag);
    const plane: number[] = [0, 0];
    const rows = stars.map((star) => {
      const [x, y, z] = mulMatVec(frame, star.dir);
      gnomonic.project(x, y, z, plane);
      const { raDeg, decDeg, magV } = starJson(star);
      return { raDeg, decDeg, magV, xRad: rounded(plane[0]!, 9)!, yRad: rounded(plane[1]!, 9)! };
    });
    const arcmin = (rad: number) => ((rad / DEG) * 60).toFixed(2);
    return {
      exit: 0,
      json: {
        fieldDeg: gear.fieldDeg,
        orientation,
        stars: rows,
      },
      text: table(
        ["right, arcmin", "up, arcmin", "V"],
        rows.map((star) => [arcmin(star.xRad), arcmin(star.yRad), star.magV.toFixed(2)]),
      ),
    };
  },
};
