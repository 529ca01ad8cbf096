/** Steps of a way as an instrument's image shows them. */
import { describe, expect, it } from "vitest";
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { createSession, pointing, stepEvent, viewOf } from "#core/session/session.ts";
import { setTubeFor } from "#core/session/tube.ts";
import { pushBetween } from "../../../src/desk/play/way.ts";
import { ANCHOR_DIR, away, hop } from "../session/hands.ts";

const TO = dirFromMas(away(2, 60));

describe("the push of a step", () => {
  for (const mount of ["altazimuth", "equatorial"] as const)
    for (const gear of ["finder-9x50", "newton200-48x"])
      it(`leads where ${gear} on its ${mount} mount shows the next mark, as many radii as it is away`, () => {
        const session = createSession(hop({ mount }));
        stepEvent(session, { kind: "use", gear });
        setTubeFor(session, gear, ANCHOR_DIR);
        const view = viewOf(session, new Float64Array(9));
        const right = view[0]! * TO[0] + view[1]! * TO[1] + view[2]! * TO[2];
        const up = view[3]! * TO[0] + view[4]! * TO[1] + view[5]! * TO[2];
        const push = pushBetween(session, gearById(gear), pointing(session), TO);
        expect(Math.atan2(push.right, push.up)).toBeCloseTo(Math.atan2(right, up), 6);
        expect(Math.hypot(push.right, push.up)).toBeCloseTo(2 / (gearById(gear).fieldDeg / 2), 6);
      });

  it("is turned by half where the image is", () => {
    const session = createSession(hop());
    const direct = pushBetween(session, gearById("binocular-10x50"), ANCHOR_DIR, TO);
    const turned = pushBetween(session, gearById("finder-9x50"), ANCHOR_DIR, TO);
    const [a, b] = [Math.atan2(direct.right, direct.up), Math.atan2(turned.right, turned.up)];
    expect(Math.abs(Math.abs(a - b) / DEG - 180)).toBeLessThan(1e-6);
  });

  it("is nothing from a place to itself", () => {
    expect(pushBetween(createSession(hop()), gearById("finder-9x50"), TO, TO)).toEqual({ right: 0, up: 0 });
  });
});
