/** Signs of the chart as paths about (0, 0), x right, y down. Kinds differ by form, never by colour. */
import type { SignMark } from "./types.ts";

const px = (value: number) => String(Math.round(value * 100) / 100);

const ellipse = (a: number, b: number, turnDeg: number) =>
  [1, -1]
    .map((side) => {
      const turn = (turnDeg * Math.PI) / 180;
      const [x, y] = [a * Math.cos(turn) * side, a * Math.sin(turn) * side];
      return `${side === 1 ? `M${px(-x)} ${px(-y)}` : ""}A${px(a)} ${px(b)} ${px(turnDeg)} 0 1 ${px(x)} ${px(y)}`;
    })
    .join("");

const circle = (r: number) => ellipse(r, r, 0);
const square = (r: number) => `M${px(-r)} ${px(-r)}H${px(r)}V${px(r)}H${px(-r)}Z`;

/** Short arcs or strokes with gaps as long as themselves, so that a dotted sign needs no dash pattern. */
const dottedCircle = (r: number, count: number) =>
  Array.from({ length: count }, (_, i) => {
    const [from, to] = [(i / count) * 2 * Math.PI, ((i + 0.45) / count) * 2 * Math.PI];
    return `M${px(r * Math.cos(from))} ${px(r * Math.sin(from))}A${px(r)} ${px(r)} 0 0 1 ${px(r * Math.cos(to))} ${px(r * Math.sin(to))}`;
  }).join("");

const dashedSquare = (r: number) => {
  const dashes = [-1, -0.5, 0, 0.5].map((at) => [at * r, (at + 0.3) * r] as const);
  return dashes
    .flatMap(([from, to]) => [
      `M${px(from)} ${px(-r)}H${px(to)}`,
      `M${px(from)} ${px(r)}H${px(to)}`,
      `M${px(-r)} ${px(from)}V${px(to)}`,
      `M${px(r)} ${px(from)}V${px(to)}`,
    ])
    .join("");
};

const ticks = (from: number, to: number) =>
  `M0 ${px(-from)}V${px(-to)}M0 ${px(from)}V${px(to)}M${px(-from)} 0H${px(-to)}M${px(from)} 0H${px(to)}`;

/** Two strokes that leave a comet's head and widen, away from the Sun. */
const tail = (r: number, axisRad: number) =>
  [-0.3, 0.3]
    .map((asideRad) => {
      const [x, y] = [-Math.sin(axisRad + asideRad), -Math.cos(axisRad + asideRad)];
      return `M${px(0.8 * r * x)} ${px(0.8 * r * y)}L${px(2.2 * r * x)} ${px(2.2 * r * y)}`;
    })
    .join("");

/** The path of a sign; `r` its radius in px, `axisRad` the position angle of its long axis, `flat` minor by major axis. */
export function signPath({ sign, r, axisRad, flat }: Pick<SignMark, "sign" | "r" | "axisRad" | "flat">): string {
  switch (sign) {
    case "openCluster":
    case "asterism":
      return dottedCircle(r, 12);
    case "globularCluster":
      return `${circle(r)}M${px(-r)} 0H${px(r)}M0 ${px(-r)}V${px(r)}`;
    case "planetaryNebula":
      return circle(r) + ticks(r, 2 * r);
    case "galaxy":
      // North up and east left: a position angle runs counter-clockwise from up.
      return ellipse(r, r * flat, -90 - (axisRad * 180) / Math.PI);
    case "emissionNebula":
    case "reflectionNebula":
    case "supernovaRemnant":
      return square(r);
    case "darkNebula":
      return dashedSquare(r);
    case "comet":
      return circle(0.6 * r) + tail(r, axisRad);
    case "minorPlanet":
      return `M0 ${px(-r)}L${px(0.6 * r)} 0L0 ${px(r)}L${px(-0.6 * r)} 0Z`;
    case "doubleStar":
      return `M${px(-2.1 * r)} 0H${px(2.1 * r)}`;
    case "anchor":
      return circle(r);
    case "target":
      return ticks(r * 0.55, r * 1.3);
  }
}
