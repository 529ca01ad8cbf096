/** Sets a hop sheet: opens the lesson's sky, compiles the hop, and works out all that the page says. */

import { DEG, dirFromMas, positionAngleRad, radecFromDir } from "#core/celestial/vector.ts";
import { pageCone } from "#core/chart/hopPages.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { gearById } from "#core/optics/gear.ts";
import { distanceDas } from "#core/score/places.ts";
import type { Band, CompiledAttempt, Dir, Gear, Seeing, SkyObject, StarBlock } from "#core/seams/index.ts";
import { startAttempt } from "../play/attempt.ts";
import { createLoading } from "../play/loading.ts";
import { openSkyOf } from "../play/skies.ts";
import { placeInView, pushSeen, viewOfGear } from "../steps/pushSeen.ts";
import type { Push } from "../steps/stepShape.ts";
import { looksReady } from "../words/looks.ts";
import { markName, say } from "../words/say.ts";
import { hopChart, hopPrintPage, type PrintedChart, wideChart, widePrintPage } from "./charts.ts";
import { type Night, nightOf } from "./night.ts";

export interface PrintedLeg {
  readonly mark: string;
  readonly push: Push;
  readonly deg: number;
  readonly fields: number;
  /** Position angle of the way, degrees from north by east. */
  readonly towardsDeg: number;
}
export interface GearRow {
  readonly gear: Gear;
  readonly limitMag: number;
  readonly band: Band;
}
/** Stars of the hop and north, as an instrument turns them: radii of the hopping field, right and up. */
export interface GearView {
  readonly gear: Gear;
  readonly stars: readonly (Push & { readonly magV: number })[];
  readonly target: Push;
  readonly north: Push;
}
export interface HopSheet {
  readonly lesson: Lesson;
  readonly compiled: CompiledAttempt;
  readonly object: SkyObject;
  readonly place: { readonly raDeg: number; readonly decDeg: number };
  readonly wide: PrintedChart;
  readonly hop: PrintedChart;
  readonly rows: readonly GearRow[];
  readonly views: readonly GearView[];
  readonly legs: readonly PrintedLeg[];
  readonly night: Night;
}

/** So many of the brightest stars stand in for the page in the small views. */
const STARS_IN_VIEW = 6;

function legsOfWay({ ways, spec, hoppingFieldDas }: CompiledAttempt): PrintedLeg[] {
  const { marks } = ways[0]!;
  return marks.slice(1).map(({ dir, name }, i) => {
    const [from, to] = [dirFromMas(marks[i]!.dir), dirFromMas(dir)];
    const lengthDas = distanceDas(from, to);
    return {
      mark: markName(name),
      push: pushSeen(spec, spec.hoppingGear, from, to),
      deg: lengthDas / 36_000,
      fields: lengthDas / hoppingFieldDas,
      towardsDeg: positionAngleRad(from, to) / DEG,
    };
  });
}

/** The brightest stars within the hopping field about a place. */
function starsAbout(centre: Dir, radiusRad: number, blocks: readonly StarBlock[]): { dir: Dir; magV: number }[] {
  const cosReach = Math.cos(radiusRad);
  const found: { dir: Dir; magV: number }[] = [];
  for (const { dirs, milliMag, count, invented } of blocks)
    for (let i = 0; !invented && i < count; i++) {
      const dir: Dir = [dirs[3 * i]!, dirs[3 * i + 1]!, dirs[3 * i + 2]!];
      if (dir[0] * centre[0] + dir[1] * centre[1] + dir[2] * centre[2] >= cosReach)
        found.push({ dir, magV: milliMag[i]! / 1000 });
    }
  return found.sort((a, b) => a.magV - b.magV).slice(0, STARS_IN_VIEW);
}

function viewsOf({ spec, hoppingFieldDas }: CompiledAttempt, blocks: readonly StarBlock[]): GearView[] {
  const target = dirFromMas(spec.targets[0]!.dir);
  const reachRad = (hoppingFieldDas / 36_000 / 2) * DEG * 0.92;
  const stars = starsAbout(target, reachRad, blocks);
  const north: Dir = [0, 0, 1];
  return spec.gear
    .map(gearById)
    .filter(({ kind }, _, all) => kind !== "eye" || all.length === 1)
    .map((gear) => {
      const view = viewOfGear(spec, gear.id, target);
      // All of them to the scale of the hopping field, so that only the turn differs.
      const place = (dir: Dir) => placeInView(view, spec.hoppingGear, dir);
      const up = place(north);
      const long = Math.hypot(up.right, up.up) || 1;
      return {
        gear,
        stars: stars.map(({ dir, magV }) => ({ ...place(dir), magV })),
        target: place(target),
        north: { right: up.right / long, up: up.up / long },
      };
    });
}

const rowsOf = ({ spec, limits }: CompiledAttempt, seeing: Seeing): GearRow[] =>
  limits.map(({ gear, avertedMilliMag }) => ({
    gear: gearById(gear),
    limitMag: avertedMilliMag / 1000,
    band: seeing.object(spec.targets[0]!.objectId, gear).band,
  }));

/**
 * @param withWay whether the way is printed
 * @throws DataFileError where no star of the sky came
 */
export async function setSheet(lesson: Lesson, withWay: boolean): Promise<HopSheet> {
  const sky = openSkyOf(lesson);
  const loading = createLoading(sky.source, () => undefined);
  try {
    await looksReady();
    const { compiled, seeing } = await startAttempt(lesson, sky, loading, true);
    const legs = legsOfWay(compiled);
    const pages = [widePrintPage(compiled, []), hopPrintPage(compiled, [], legs.length)];
    const loaded: StarBlock[][] = [];
    for (const page of pages) loaded.push([...(await loading.whole(pageCone(page), page.limitMag)).blocks]);
    const [wideBlocks, hopBlocks] = loaded as [StarBlock[], StarBlock[]];
    const words = { anchor: say("hop.anchor"), target: say("hop.target") };
    const target = dirFromMas(compiled.spec.targets[0]!.dir);
    const { raRad, decRad } = radecFromDir(target);
    return {
      lesson,
      compiled,
      object: sky.objects.find(({ id }) => id === compiled.spec.targets[0]!.objectId)!,
      place: { raDeg: raRad / DEG, decDeg: decRad / DEG },
      wide: wideChart({ compiled, sky, blocks: wideBlocks, words }),
      hop: hopChart({ compiled, sky, blocks: hopBlocks, words }, withWay),
      rows: rowsOf(compiled, seeing),
      views: viewsOf(compiled, hopBlocks),
      legs,
      night: nightOf(lesson.place, target, compiled.spec.startMs),
    };
  } finally {
    loading.stop();
  }
}
