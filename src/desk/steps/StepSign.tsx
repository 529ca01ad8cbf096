/** The sign of a step: the ring is the field, the arrow in it the way to the next mark, true in length and direction. */
import "../styles/steps.css";
import { type Push, stepShape } from "./stepShape.ts";

export type { Push } from "./stepShape.ts";

interface StepSignProps {
  /** True field of the instrument that the step is made in, degrees; for those who ask what the ring is. */
  readonly fieldDeg: number;
  /** From the middle of the field to the next mark, as that instrument's image shows it; nothing at the anchor. */
  readonly push: Push;
  /** The step in words, for those who hear it: which way, how far. */
  readonly label: string;
  readonly sizePx?: number;
}

/** Drawn in the colour of the text about it, 34 px wide unless told. */
export function StepSign({ fieldDeg, push, label, sizePx = 34 }: StepSignProps) {
  const { ring, tip, head } = stepShape(push, sizePx);
  return (
    <svg
      class="step-sign"
      width={sizePx}
      height={sizePx}
      viewBox={`0 0 ${sizePx} ${sizePx}`}
      data-field-deg={fieldDeg}
      role="img"
      aria-label={label}
    >
      <circle class="step-ring" cx={ring.x} cy={ring.y} r={ring.radiusPx} />
      <circle class="step-from" cx={ring.x} cy={ring.y} r={1.4} />
      {head && <path class="step-push" d={`M${ring.x} ${ring.y}L${tip.x} ${tip.y}${head}`} />}
    </svg>
  );
}
