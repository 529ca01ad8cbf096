/** The way of a guided lesson as a list of steps, each as the image of the instrument in hand shows it. */

import { altAzFromDir, zenithDir } from "#core/celestial/frames.ts";
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { acrossAxis2, axesFromDir, tubeRollRad } from "#core/optics/mount.ts";
import { imageOrientation } from "#core/optics/orientation.ts";
import { viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, Gear } from "#core/seams/index.ts";
import { gearInUse, horizonOf, type Session } from "#core/session/session.ts";
import type { Push } from "../steps/stepShape.ts";
import { markName } from "../words/say.ts";
import type { Hop } from "./hop.ts";
import type { WayList, WayStep } from "./model.ts";

const view = new Float64Array(9);

/** The way from one place to another, as an instrument that points at the first one shows it: radii of its field. */
export function pushBetween(session: Session, gear: Gear, from: Dir, to: Dir): Push {
  const { clock, compiled } = session;
  const zenith = zenithDir(horizonOf(session));
  const { axis1Rad, axis2Rad } = axesFromDir(clock.mount, clock.frame, from);
  const top = acrossAxis2(clock.mount, clock.frame, axis1Rad, axis2Rad);
  const { altRad } = altAzFromDir(horizonOf(session), from);
  const rollRad = tubeRollRad(clock.mount, from, zenith, top);
  viewFromIcrs(from, zenith, imageOrientation(gear, altRad, rollRad, compiled.spec.stance), view);
  const right = view[0]! * to[0] + view[1]! * to[1] + view[2]! * to[2];
  const up = view[3]! * to[0] + view[4]! * to[1] + view[5]! * to[2];
  const across = Math.hypot(right, up);
  if (across === 0) return { right: 0, up: 0 };
  const radii = separationRad(from, to) / ((gear.fieldDeg * DEG) / 2);
  return { right: (right / across) * radii, up: (up / across) * radii };
}

/** The instrument whose field measures the steps: the one in use if one hops in such a field, else the hopping one. */
function measuringGear({ attempt: { session, compiled } }: Hop): Gear {
  const gear = gearInUse(session);
  return gear.kind === "eye" || gear.kind === "sight" ? gearById(compiled.spec.hoppingGear) : gear;
}

/** The first way, step by step; null at the levels that are not guided, where no distance is told. */
export function wayList(hop: Hop): WayList | null {
  const { lesson, attempt, facts } = hop;
  if (lesson.level !== "G") return null;
  const { session, compiled } = attempt;
  const gear = measuringGear(hop);
  const { marks } = compiled.ways[0]!;
  const dirs = marks.map(({ dir }) => dirFromMas(dir));
  const isFound = session.state.found.length > 0;
  const isReached = (i: number) =>
    isFound || (session.state.phase !== "anchor" && (i === 0 || (i < marks.length - 1 && i <= facts.marksReached)));
  const next = marks.findIndex((_, i) => !isReached(i));
  const steps = marks.map(
    ({ name }, i): WayStep => ({
      name: markName(name),
      push: i === 0 ? { right: 0, up: 0 } : pushBetween(session, gear, dirs[i - 1]!, dirs[i]!),
      reached: isReached(i),
      next: i === next,
    }),
  );
  return { fieldDeg: gear.fieldDeg, steps };
}
