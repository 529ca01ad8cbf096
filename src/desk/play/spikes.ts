/** The vanes of the telescope in use, for the picture: four thin lines on the brightest stars, that stand with the tube. */

import type { NightSky } from "#core/eye/nightSky.ts";
import { spikeBelowMag } from "#core/eye/spikes.ts";
import { hasVanes, VANE_RAD } from "#core/optics/vanes.ts";
import type { Dir, GearId } from "#core/seams/index.ts";
import { gearInUse, pointing, pushDirections, type Session } from "#core/session/session.ts";
import type { FieldSpikes } from "../../stage/index.ts";
import type { Attempt } from "./attempt.ts";
import type { Mutable } from "./mutable.ts";

/** Spikes of an attempt's telescope. */
export function createSpikes(): { now(session: Session, attempt: Pick<Attempt, "night">): FieldSpikes | null } {
  const spikes: Mutable<FieldSpikes> = { top: [0, 0, 1] as Dir, belowMag: 0, vaneRad: VANE_RAD };
  let known: { readonly gear: GearId; readonly night: NightSky } | null = null;
  return {
    /**
     * Before each frame. How faint they are is worked out when the instrument or the
     * night changes: over the sky of one hour it differs little.
     */
    now(session, { night }) {
      const gear = gearInUse(session);
      if (!hasVanes(gear)) return null;
      if (known?.gear !== gear.id || known.night !== night) {
        known = { gear: gear.id, night };
        const mu = night.atTheEyeMu(pointing(session), gear.id);
        spikes.belowMag = spikeBelowMag(gear.apertureMm, gear.magnification, mu);
      }
      spikes.top = pushDirections(session).axis2;
      return spikes;
    },
  };
}
