/** What tells each waymark of a generated hop from the star that is most easily taken for it, in the finder's own image. */
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import { rivalOf, type Telling } from "#core/field/rival.ts";
import { gearById } from "#core/optics/gear.ts";
import { coneOfHop } from "../play/attempt.ts";
import type { Hop } from "../play/hop.ts";
import { pushBetween } from "../play/way.ts";
import type { Push } from "../steps/stepShape.ts";
import { saySeed as say } from "./seedIds.ts";

const SIDES = ["above", "upperRight", "right", "lowerRight", "below", "lowerLeft", "left", "upperLeft"] as const;
const HOW = {
  brighter: "rivalBrighter",
  fainter: "rivalFainter",
  redder: "rivalRedder",
  whiter: "rivalWhiter",
  alone: "rivalAlone",
  accompanied: "rivalAccompanied",
} as const satisfies Record<Telling, string>;

/** Which of eight sides a place lies on, as the image shows it. */
export const sideOf = ({ right, up }: Push): (typeof SIDES)[number] =>
  SIDES[(Math.round(Math.atan2(right, up) / (Math.PI / 4)) + 8) % 8]!;

/**
 * Finds the rivals once; what is said follows the sky, which turns.
 * @returns the sentence for a leg; an empty one where there is nothing to be told, as on the last leg, which leads to no star
 */
export async function tellApart({ attempt: { session, compiled }, loading }: Hop): Promise<(leg: number) => string> {
  const { spec, limits, ways } = compiled;
  const gear = gearById(spec.hoppingGear);
  const limitMilliMag = limits.find(({ gear: id }) => id === gear.id)!.avertedMilliMag;
  const { blocks } = await loading.whole(coneOfHop(spec, gear.fieldDeg), limitMilliMag / 1000);
  const { marks } = ways[0]!;
  const dirs = marks.map(({ dir }) => dirFromMas(dir));
  const rivals = dirs.slice(0, -2).map((from, leg) => {
    const to = dirs[leg + 1]!;
    return rivalOf(blocks, { from, to, fieldRad: gear.fieldDeg * DEG, limitMilliMag });
  });
  return (leg) => {
    const rival = rivals[leg];
    if (!rival) return "";
    const side = say(sideOf(pushBetween(session, gear, dirs[leg]!, rival.dir)));
    return say("notThat", { side, star: leg === 0 ? marks[0]!.name : say("lastStar"), how: say(HOW[rival.telling]) });
  };
}
