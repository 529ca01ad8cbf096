/** More help: the aids that the lesson offers, gear, night and picture, and two ways to say that it is over. */
import type { Signal } from "@preact/signals";
import { reducedMotion } from "../app/state.ts";
import { fixed, say } from "../words/say.ts";
import { darkOn } from "./darkOn.ts";
import { grainOn } from "./grain.ts";
import { LimitsTold } from "./LimitBar.tsx";
import type { AidOffer, PlayModel } from "./model.ts";
import { costs, Row } from "./Row.tsx";
import { twinkleOn } from "./twinkle.ts";

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
        aria-valuetext={fixed(model.limitMag.value, 1)}
        onInput={({ currentTarget }) => model.setLimit(Number(currentTarget.value))}
      />
      <span class="price">{fixed(model.limitMag.value, 1)}</span>
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

/** A white torch to try what it costs, where light costs anything; and whether it does. */
function LightRows({ model }: { model: PlayModel }) {
  const shines = model.torch.value;
  return (
    <>
      {darkOn.value && (
        <Row
          lead={say("play.torch")}
          price={shines ? say("play.taken") : say("play.torchNote")}
          pressed={shines}
          onPress={() => model.shineTorch()}
        />
      )}
      <PictureRow shown={darkOn} off={say("play.darkOff")} on={say("play.darkOn")} />
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

export function MoreRows({ model }: { model: PlayModel }) {
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
      <LightRows model={model} />
      <LimitsTold model={model} />
      {model.claim.value.can && !model.seeking.value && (
        <Row lead={say("play.notSeenSaid")} price={say("play.notSeenNote")} onPress={() => model.claimNotSeen()} />
      )}
      {!model.isLook && <Row lead={say("play.giveUp")} price={say("play.giveUpNote")} onPress={() => model.giveUp()} />}
    </>
  );
}
