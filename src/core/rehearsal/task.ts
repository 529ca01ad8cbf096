/** A learner's task, read off a printed page. */

import { DEG } from "#core/celestial/vector.ts";
import { type ChartPage, ringRadiusPx } from "#core/chart/page.ts";
import type { ChartMark, SignMark } from "#core/chart/types.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Gear } from "#core/seams/index.ts";
import type { GearInHand, PaperPoint, RehearsalTask, Sought } from "./types.ts";

/** What the page shows: dots, the anchor's sign, the target's. @throws InputError where a sign is not on it */
export function taskOfPage(page: ChartPage, marks: readonly ChartMark[], hopping: Gear, claim: Gear): RehearsalTask {
  const target = signOf(marks, "target");
  return {
    stars: marks.flatMap((mark) => (mark.kind === "dot" ? [{ x: mark.x, y: mark.y, magV: mark.magV }] : [])),
    anchor: pointOf(signOf(marks, "anchor")),
    target: pointOf(target),
    sought: soughtBy(target),
    radPerPx: DEG / page.pxPerDeg,
    hopping: inHand(page, hopping),
    claim: inHand(page, claim),
  };
}

const pointOf = ({ x, y }: SignMark): PaperPoint => ({ x, y });

function soughtBy({ sign }: SignMark): Sought {
  if (sign === "minorPlanet") return "stranger";
  return sign === "doubleStar" || sign === "asterism" ? "printed" : "patch";
}

function signOf(marks: readonly ChartMark[], role: "anchor" | "target"): SignMark {
  for (const mark of marks) if (mark.kind === "sign" && mark.role === role) return mark;
  throw new InputError(`the page shows no ${role}`, "Choose a page that holds the whole hop.");
}

/** The light path tells an observer whether the picture is mirrored: one reflection does it. */
function inHand(page: ChartPage, gear: Gear): GearInHand {
  return {
    id: gear.id,
    radiusPx: ringRadiusPx(page, gear.fieldDeg),
    parity: gear.path === "mirrorDiagonal" ? -1 : 1,
  };
}
