/** Help as rows, each with its price: hints by grade, back to the anchor, and the aids that the lesson offers. */

import type { Signal } from "@preact/signals";
import { reducedMotion } from "../app/state.ts";
import { Icon } from "../icons.tsx";
import { say } from "../words/say.ts";
import { grainOn } from "./grain.ts";
import { LimitsTold } from "./LimitBar.tsx";
import type { AidOffer, HintRow, PlayModel } from "./model.ts";
import { twinkleOn } from "./twinkle.ts";

const GRADES = { 1: "play.hint1", 2: "play.hint2", 3: "play.hint3" } as const;

interface RowProps {
  readonly lead: string;
  readonly price: string;
  readonly off?: boolean;
  readonly pressed?: boolean;
  readonly onPress: () => void;
}

function Row({ lead, price, off = false, pressed, onPress }: RowProps) {
  return (
    <button type="button" class="row" disabled={off} aria-pressed={pressed} onClick={onPress}>
      <span>{lead}</span>
      <span class="price">{price}</span>
    </button>
  );
}

const costs = (points: number) => (points > 0 ? say("play.costs", { points }) : say("play.free"));

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
      <span>{row.text}</span>
      <span class="price">{priceOf(row)}</span>
    </p>
  );
}

function Aid({ offer, on, off, set }: { offer: AidOffer; on: string; off: string; set: (value: boolean) => void }) {
  if (!offer.offered) return null;
  return (
    <Row
      lead={offer.on ? off : on}
      price={offer.on ? say("play.taken") : costs(offer.cost)}
      pressed={offer.on}
      onPress={() => set(!offer.on)}
    />
  );
}

/** The limit, to be set by hand where the lesson lets one try what it does. */
function LimitRow({ model }: { model: PlayModel }) {
  const range = model.limitRange.value;
  if (!range) return null;
  return (
    <label class="row limit-row">
      <span>{say("play.faintest")}</span>
      <input
        class="brightness"
        type="range"
        min={range.least}
        max={range.most}
        step={0.1}
        value={model.limitMag.value}
        aria-valuetext={model.limitMag.value.toFixed(1)}
        onInput={({ currentTarget }) => model.setLimit(Number(currentTarget.value))}
      />
      <span class="price">{model.limitMag.value.toFixed(1)}</span>
    </label>
  );
}

/** The time of the night, until the hop begins. */
function NightRow({ model }: { model: PlayModel }) {
  const night = model.night.value;
  if (!night || night.leastMs === night.mostMs) return null;
  return (
    <label class="row limit-row">
      <span>{say("play.night")}</span>
      <input
        class="brightness"
        type="range"
        min={night.leastMs}
        max={night.mostMs}
        step={night.stepMs}
        value={night.atMs}
        aria-valuetext={night.words}
        onInput={({ currentTarget }) => model.setTime(currentTarget.valueAsNumber)}
      />
      <span class="price">{night.words}</span>
    </label>
  );
}

/** A row that turns something of the picture on or off, for good. */
function PictureRow({ shown, off, on }: { shown: Signal<boolean>; off: string; on: string }) {
  return (
    <Row
      lead={shown.value ? off : on}
      price={say("play.free")}
      pressed={shown.value}
      onPress={() => {
        shown.value = !shown.value;
      }}
    />
  );
}

/** Grain, where the sky is one that ends; twinkling, where the reader's machine does not hold everything still anyway. */
function PictureRows({ model }: { model: PlayModel }) {
  return (
    <>
      {model.lesson.sky === "catalogue" && (
        <PictureRow shown={grainOn} off={say("play.grainOff")} on={say("play.grainOn")} />
      )}
      {!reducedMotion.value && <PictureRow shown={twinkleOn} off={say("play.twinkleOff")} on={say("play.twinkleOn")} />}
    </>
  );
}

function GearRows({ model }: { model: PlayModel }) {
  const turns = model.skyTurns.value;
  const screws = model.screws.value;
  return (
    <>
      {turns !== null && (
        <Row
          lead={say(turns ? "play.skyStop" : "play.skyGo")}
          price={turns ? say("play.free") : say("play.skyIsStopped")}
          pressed={!turns}
          onPress={() => model.setSkyTurns(!turns)}
        />
      )}
      {screws !== null && (
        <Row
          lead={say(screws ? "play.screwsOff" : "play.screws")}
          price={screws ? say("play.taken") : say("play.free")}
          pressed={screws}
          onPress={() => model.setScrews(!screws)}
        />
      )}
    </>
  );
}

function MoreRows({ model }: { model: PlayModel }) {
  return (
    <>
      <Aid
        offer={model.carry.value}
        on={say("play.carry")}
        off={say("play.carryOff")}
        set={(value) => model.setCarry(value)}
      />
      <Aid
        offer={model.asInInstrument.value}
        on={say("play.asIn")}
        off={say("play.asInOff")}
        set={(value) => model.setAsInInstrument(value)}
      />
      <LimitRow model={model} />
      <NightRow model={model} />
      <GearRows model={model} />
      <PictureRows model={model} />
      <LimitsTold model={model} />
      {model.claim.value.can && !model.seeking.value && (
        <Row lead={say("play.notSeenSaid")} price={say("play.notSeenNote")} onPress={() => model.claimNotSeen()} />
      )}
      <Row lead={say("play.giveUp")} price={say("play.giveUpNote")} onPress={() => model.giveUp()} />
    </>
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
      <div class="home-row">
        <Row
          lead={say("play.home")}
          price={home.can ? homePrice : say("play.notNow")}
          off={!home.can}
          onPress={() => model.restart()}
        />
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
