/** What a hand learns by nudging: which way, and how far, the place goes for a push of either axis. */

export type Vector = readonly [x: number, y: number];

export interface HandSense {
  /** The next nudge to learn by, or null once both axes are known. */
  nudge(): Vector | null;
  /** Tells what a push did. */
  learn(push: Vector, went: Vector): void;
  /** The push that should move the place by so much. */
  pushFor(wanted: Vector): Vector;
}

/** Less than this of a nudge is no motion at all. */
const STILL = 1e-9;

/** @param nudgeRad how far to nudge an axis to see what it does */
export function createHandSense(nudgeRad: number): HandSense {
  // Columns: what the place does for one radian of axis 1 and of axis 2.
  let m = [0, 0, 0, 0];
  const known = [false, false];
  return {
    nudge() {
      if (!known[0]) return [nudgeRad, 0];
      return known[1] ? null : [0, nudgeRad];
    },
    learn([p1, p2], [dx, dy]) {
      const length2 = p1 * p1 + p2 * p2;
      // Where nothing at all has moved the hand was not yet on the tube: that tells nothing of what it does.
      if (length2 < STILL * STILL || (dx === 0 && dy === 0)) return;
      if (p2 === 0) known[0] = true;
      if (p1 === 0) known[1] = true;
      // Broyden's rule (1965): the least change that explains what was seen.
      const [ex, ey] = [dx - (m[0]! * p1 + m[1]! * p2), dy - (m[2]! * p1 + m[3]! * p2)];
      m = [
        m[0]! + (ex * p1) / length2,
        m[1]! + (ex * p2) / length2,
        m[2]! + (ey * p1) / length2,
        m[3]! + (ey * p2) / length2,
      ];
    },
    pushFor([x, y]) {
      const determinant = m[0]! * m[3]! - m[1]! * m[2]!;
      return [(m[3]! * x - m[1]! * y) / determinant, (m[0]! * y - m[2]! * x) / determinant];
    },
  };
}
