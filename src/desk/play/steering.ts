/** Drags and held keys become pushes: what the hand did since the last step of the session. */
import { DEG } from "#core/celestial/vector.ts";
import {
  carryingHand,
  type Drag,
  gearInUse,
  type Hand,
  looksByEye,
  NO_HAND,
  pushingHand,
  type Session,
  TICK_MS,
} from "#core/session/session.ts";

/** Speeds of held keys in fields a second: at first, after `ramp` ms, and finely. */
const KEY = { first: 0.1, full: 0.55, rampMs: 900, fine: 0.07 } as const;
/** The naked eye looks round more slowly, in its wide field. */
const EYE_SHARE = 0.6;

export interface Steering {
  /** A drag in CSS px, x right and y down, on a field of so many px radius. */
  drag(dxPx: number, dyPx: number, fieldRadiusPx: number): void;
  steer(right: -1 | 0 | 1, up: -1 | 0 | 1, fine: boolean): void;
  carry: boolean;
  /** The hand is on the finder's screws: nothing pushes the tube. */
  screws: boolean;
  /** The hand of the next step, and forgets the drag. */
  take(session: Session): Hand;
  /** What was turned at the screws since the last time, as a drag of the stars; null where nothing was. */
  takeScrews(): Drag | null;
  readonly active: boolean;
  /** Which way the hand pushes, clockwise from the top, degrees; the last way while it rests. */
  readonly towardDeg: number;
}

export function createSteering(): Steering {
  const drag = { rightRad: 0, upRad: 0 };
  let pending = { x: 0, y: 0, radiusPx: 1 };
  let keys = { right: 0, up: 0, fine: false };
  let heldMs = 0;
  let towardDeg = 0;
  let turned = { rightRad: 0, upRad: 0 };

  const fromKeys = (fieldRad: number, byEye: boolean): Drag => {
    heldMs += TICK_MS;
    const grown = Math.min(1, heldMs / KEY.rampMs);
    const speed = keys.fine ? KEY.fine : KEY.first + (KEY.full - KEY.first) * grown;
    const step = (speed * (byEye ? EYE_SHARE : 1) * fieldRad * TICK_MS) / 1000 / Math.hypot(keys.right, keys.up);
    // The eye goes where the arrow says; a drag carries the sky the other way.
    const sign = byEye ? -1 : 1;
    return { rightRad: sign * keys.right * step, upRad: sign * keys.up * step };
  };

  const steering: Steering = {
    carry: false,
    screws: false,
    get active() {
      return keys.right !== 0 || keys.up !== 0 || pending.x !== 0 || pending.y !== 0;
    },
    get towardDeg() {
      return towardDeg;
    },
    drag(dxPx, dyPx, radiusPx) {
      pending = { x: pending.x + dxPx, y: pending.y + dyPx, radiusPx };
      if (dxPx !== 0 || dyPx !== 0) towardDeg = Math.atan2(dxPx, -dyPx) / DEG;
    },
    steer(right, up, fine) {
      if (right === 0 && up === 0) heldMs = 0;
      else towardDeg = Math.atan2(right, up) / DEG;
      keys = { right, up, fine };
    },
    take(session) {
      if (!steering.active) return NO_HAND;
      const fieldRad = gearInUse(session).fieldDeg * DEG;
      const byEye = looksByEye(session);
      const perPx = fieldRad / (2 * pending.radiusPx);
      drag.rightRad = pending.x * perPx;
      drag.upRad = -pending.y * perPx;
      if (keys.right !== 0 || keys.up !== 0) {
        const held = fromKeys(fieldRad, byEye);
        drag.rightRad += held.rightRad;
        drag.upRad += held.upRad;
      }
      pending.x = 0;
      pending.y = 0;
      if (steering.screws) {
        turned = { rightRad: turned.rightRad + drag.rightRad, upRad: turned.upRad + drag.upRad };
        return NO_HAND;
      }
      return steering.carry && !byEye ? carryingHand(session, drag) : pushingHand(session, drag);
    },
    takeScrews() {
      if (turned.rightRad === 0 && turned.upRad === 0) return null;
      const taken = turned;
      turned = { rightRad: 0, upRad: 0 };
      return taken;
    },
  };
  return steering;
}
