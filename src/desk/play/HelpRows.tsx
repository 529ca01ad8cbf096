/** Help as rows, each with its price: hints by grade, back to the anchor, and the aids that the lesson offers. */

import { langOf } from "../app/langOf.ts";
import { Icon } from "../icons.tsx";
import { say } from "../words/say.ts";
import { MoreRows } from "./MoreRows.tsx";
import type { HintRow, PlayModel } from "./model.ts";
import { costs, Row } from "./Row.tsx";

const GRADES = { 1: "play.hint1", 2: "play.hint2", 3: "play.hint3" } as const;

function priceOf({ state, price }: HintRow): string {
  if (state === "used") return price ? say("play.usedCost", { points: price }) : say("play.used");
  return price === null ? say("play.ends") : costs(price);
}

/** What was said last, and what may be asked next; the others wait their turn. */
export function hintsInSight(rows: readonly HintRow[]): readonly HintRow[] {
  const used = rows.filter(({ state }) => state === "used").slice(-1);
  const next = rows.filter(({ state }) => state === "ready").slice(0, 1);
  return [...used, ...next];
}

function Hint({ row, model }: { row: HintRow; model: PlayModel }) {
  if (row.state !== "used")
    return <Row lead={say(GRADES[row.grade])} price={priceOf(row)} onPress={() => model.takeHint()} />;
  return (
    <p class="row used">
      <span lang={langOf(model.lesson)}>{row.text}</span>
      <span class="price">{priceOf(row)}</span>
    </p>
  );
}

interface HelpRowsProps {
  readonly model: PlayModel;
  readonly more: boolean;
  readonly onMore: (on: boolean) => void;
}

export function HelpRows({ model, more, onMore }: HelpRowsProps) {
  const home = model.home.value;
  const homePrice = home.cost > 0 ? say("play.costsAtMost", { points: home.cost }) : say("play.free");
  if (more)
    return (
      <div class="rows">
        <MoreRows model={model} />
        <button type="button" class="more" aria-expanded={true} onClick={() => onMore(false)}>
          <Icon name="back" />
          <span>{say("play.less")}</span>
        </button>
      </div>
    );
  return (
    <div class="rows">
      {hintsInSight(model.hints.value).map((row) => (
        <Hint key={row.grade} row={row} model={model} />
      ))}
      {!model.isLook && model.seeking.value && model.hints.value.length > 0 && (
        <Row lead={say(GRADES[1])} price={say("play.afterAnchor")} off onPress={() => {}} />
      )}
      <div class="home-row">
        {!model.isLook && (
          <Row
            lead={say("play.home")}
            price={home.can ? homePrice : say("play.notNow")}
            off={!home.can}
            onPress={() => model.restart()}
          />
        )}
        <button
          type="button"
          class="more"
          aria-expanded={false}
          aria-label={say("play.more")}
          title={say("play.more")}
          onClick={() => onMore(true)}
        >
          <Icon name="on" />
        </button>
      </div>
    </div>
  );
}
