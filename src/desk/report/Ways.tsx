/** Both ways straightened out to one scale; on longer hops a line of fields, with the lengths that still earn the dots. */
import type { Lesson } from "#core/lesson/types.ts";
import { degOf, type Facts } from "./facts.ts";
import { ParLine } from "./ParLine.tsx";
import { sayReport } from "./words.ts";

/** From so many legs on the line of fields stands in place of the bars. */
const LEGS_FOR_LINE = 3;
/** Shares of the bar: up to here words fit behind B; so far from A they fit before it. */
const ROOM_AFTER = 0.55;
const ROOM_BETWEEN = 0.45;
const percent = (share: number) => `${(100 * share).toFixed(2)}%`;

/** The dear part on its bar: thick from where it began to where the way was regained. */
function DearBar({ facts }: { facts: Facts }) {
  const { dear } = facts;
  if (!dear) return null;
  const share = (das: number) => das / Math.max(1, dear.wholeDas);
  const [from, furthest] = [share(dear.fromDas), share(dear.furthestDas)];
  const letter = (name: string, at: number) => (
    <span class="bar-letter" style={{ left: percent(at) }}>
      {name}
    </span>
  );
  return (
    <>
      <span class="dear" style={{ left: percent(from), width: percent(share(dear.toDas) - from) }} />
      {letter("A", from)}
      {letter("B", furthest)}
      <DearWords outside={dear.outside} from={from} furthest={furthest} />
    </>
  );
}

/** What A and B are about, where there is room beside B. */
function DearWords({ outside, from, furthest }: { outside: boolean; from: number; furthest: number }) {
  const after = furthest < ROOM_AFTER;
  if (!after && furthest - from < ROOM_BETWEEN) return null;
  const side = after ? { left: percent(furthest) } : { right: percent(1 - furthest) };
  return (
    <em class="bar-words" style={side}>
      {sayReport(outside ? "leftWay" : "withinWay")}
    </em>
  );
}

function Bar({ words, deg, share, facts }: { words: string; deg: string; share: number; facts?: Facts }) {
  return (
    <div class={facts?.dear ? "way has-letters" : "way"} style={{ width: percent(share) }}>
      <p>
        <span>{words}</span>
        <span class="figures">{sayReport("degrees", { deg })}</span>
      </p>
      <span class="bar" aria-hidden="true">
        {facts && <DearBar facts={facts} />}
      </span>
    </div>
  );
}

function Bars({ facts }: { facts: Facts }) {
  const { trailDas, parDas } = facts.report;
  const whole = Math.max(trailDas, parDas, 1);
  return (
    <section class="ways" aria-label={sayReport("ways")}>
      <Bar words={sayReport("shortest")} deg={degOf(parDas)} share={parDas / whole} />
      <Bar words={sayReport("trail")} deg={degOf(trailDas)} share={trailDas / whole} facts={facts} />
    </section>
  );
}

/** The ways of an attempt that went anywhere. */
export function Ways({ facts, lesson, widthPx }: { facts: Facts; lesson: Lesson; widthPx: number }) {
  if (facts.report.trailDas === 0) return null;
  const legs = facts.way.marks.length - 1;
  return legs < LEGS_FOR_LINE ? <Bars facts={facts} /> : <ParLine facts={facts} lesson={lesson} widthPx={widthPx} />;
}
