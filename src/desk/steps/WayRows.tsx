/** The way as a list: a sign, a name and a length for each step, and a tick once it is reached. */
import { fixed, say } from "../words/say.ts";
import { type Push, StepSign } from "./StepSign.tsx";

export interface WayRow {
  readonly name: string;
  /** From the mark before, as the image shows it, radii of the field; nothing at the anchor. */
  readonly push: Push;
  readonly reached: boolean;
  readonly next: boolean;
}

/** Length of a step in whole fields, to the tenth. */
const fieldsOf = ({ right, up }: Push) => fixed(Math.hypot(right, up) / 2, 1);
/** Which way a step leads in the field, as hours of a clock. */
const hourOf = ({ right, up }: Push) => ((Math.round((Math.atan2(right, up) * 6) / Math.PI) + 11) % 12) + 1;

function Step({ row, fieldDeg, isAnchor }: { row: WayRow; fieldDeg: number; isAnchor: boolean }) {
  const { name, push, reached, next } = row;
  const fields = fieldsOf(push);
  const label = isAnchor ? say("hop.anchor") : say("play.stepSaid", { fields, hour: hourOf(push) });
  return (
    <li
      class={`way-step${reached ? " is-reached" : ""}${next ? " is-next" : ""}`}
      aria-current={next ? "step" : "false"}
    >
      <StepSign fieldDeg={fieldDeg} push={push} label={label} />
      <span class="way-name">{name}</span>
      <span class="way-fields" aria-hidden="true">
        {isAnchor ? label : fields}
      </span>
      <svg class="way-tick" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        {reached && <path d="M1.5 8.5 6 13 14.5 2.5" />}
      </svg>
      {reached && <span class="hidden-words">{say("play.stepReached")}</span>}
    </li>
  );
}

interface WayRowsProps {
  readonly rows: readonly WayRow[];
  /** True field of the instrument that the signs are drawn for. */
  readonly fieldDeg: number;
  /** At most so many rows, about the next one. */
  readonly most?: number;
}

export function WayRows({ rows, fieldDeg, most = rows.length }: WayRowsProps) {
  const next = rows.findIndex((row) => row.next);
  const from = Math.max(0, Math.min((next < 0 ? rows.length : next) - 1, rows.length - most));
  return (
    <ol class="way-list" aria-label={say("play.waySaid", { fieldDeg })}>
      {rows.slice(from, from + most).map((row, i) => (
        <Step key={row.name} row={row} fieldDeg={fieldDeg} isAnchor={from + i === 0} />
      ))}
    </ol>
  );
}
