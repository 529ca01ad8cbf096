/** The way as a list: a row a leg, with the push as the hopping instrument shows it, and "you" and "par" side by side. */
import { gearById } from "#core/optics/gear.ts";
import { StepSign } from "../steps/StepSign.tsx";
import { fixed, midSentence, say } from "../words/say.ts";
import { type Facts, hoppingFieldDeg } from "./facts.ts";
import { type Leg, legsOf } from "./legs.ts";
import { sayReport } from "./words.ts";

/** The hour of a clock's face that a push goes to, as the image shows it. */
const hourOf = ({ right, up }: Leg["push"]): number =>
  Math.round((Math.atan2(right, up) * 6) / Math.PI + 12) % 12 || 12;

const Tick = ({ reached }: { reached: boolean }) => (
  <td class="way-tick">
    <span class="hidden-words">{sayReport(reached ? "reached" : "notReached")}</span>
    {reached && (
      <svg width="18" height="14" viewBox="0 0 18 14" aria-hidden="true">
        <path d="M1.5 7.5 6.5 12.5 16.5 1.5" />
      </svg>
    )}
  </td>
);

function Row({ leg, facts }: { leg: Leg; facts: Facts }) {
  const fields = (das: number) => fixed(das / facts.record.compiled.hoppingFieldDas, 2);
  const label = sayReport("step", { hour: hourOf(leg.push), fields: fields(leg.parDas) });
  return (
    <tr class={leg.reached ? undefined : "not-reached"}>
      <td class="way-sign">
        <StepSign fieldDeg={hoppingFieldDeg(facts.record)} push={leg.push} label={label} />
      </td>
      <th scope="row">{leg.name}</th>
      <td>{leg.youDas === null ? sayReport("noFigure") : fields(leg.youDas)}</td>
      <td class="way-par">{fields(leg.parDas)}</td>
      <Tick reached={leg.reached} />
    </tr>
  );
}

export function WayList({ facts }: { facts: Facts }) {
  const { record, way, stood } = facts;
  const gear = say(`gear.${gearById(record.compiled.spec.hoppingGear).kind}`);
  return (
    <table class="way-list">
      <caption>{sayReport("wayTitle", { gear: midSentence(gear) })}</caption>
      <thead>
        <tr>
          <th scope="col" class="way-sign">
            <span class="hidden-words">{sayReport("push")}</span>
          </th>
          <th scope="col">
            <span class="hidden-words">{sayReport("mark")}</span>
          </th>
          <th scope="col">{sayReport("you")}</th>
          <th scope="col">{sayReport("par")}</th>
          <th scope="col" class="way-tick">
            <span class="hidden-words">{sayReport("reachedHead")}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <td class="way-sign">
            <StepSign fieldDeg={hoppingFieldDeg(record)} push={{ right: 0, up: 0 }} label={sayReport("stepStart")} />
          </td>
          <th scope="row">{way.marks[0]!.name}</th>
          <td colSpan={2} class="way-anchor">
            {say("hop.anchor")}
          </td>
          <Tick reached={stood !== null} />
        </tr>
        {legsOf(facts).map((leg, i) => (
          <Row key={i} leg={leg} facts={facts} />
        ))}
      </tbody>
    </table>
  );
}
