/** What the learner may do, as the panels ask for it: each act becomes an event of the session, or a change of the sheet. */
import { masFromDir } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";
import { gearInUse, type SessionEvent, stepEvent, tubeDir } from "#core/session/session.ts";
import { say } from "../words/say.ts";
import { layAsInInstrument, refreshAgreement } from "./agreeing.ts";
import { followHour } from "./followHour.ts";
import type { Hop } from "./hop.ts";
import type { PlayModel } from "./model.ts";
import { NIGHT_STEP_MS, sunNow } from "./night.ts";
import { actOn, afterGear, pinLanded, settle } from "./outcomes.ts";
import { legAt } from "./progress.ts";
import type { PlaySignals } from "./signals.ts";
import type { Steering } from "./steering.ts";

export type Acts = Pick<
  PlayModel,
  | "begin"
  | "use"
  | "wider"
  | "narrower"
  | "confirm"
  | "claimHere"
  | "claimNotSeen"
  | "restart"
  | "takeHint"
  | "setLimit"
  | "setCarry"
  | "setAsInInstrument"
  | "giveUp"
  | "setTime"
  | "stepTime"
  | "resetTime"
  | "setSkyTurns"
  | "setScrews"
  | "pinAt"
  | "leavePin"
  | "drawPencil"
  | "rubOut"
  | "sheetTurned"
  | "drag"
  | "dragging"
  | "steer"
>;
export interface ActsHow {
  chooseSheet(hop: Hop): void;
  invalidate(): void;
  /** Brings the session up to a moment of the page's clock, ms. */
  upTo(atMs: number): void;
  fieldRadiusPx(): number;
}

export function createActs(hopNow: () => Hop | null, signals: PlaySignals, steering: Steering, how: ActsHow): Acts {
  /** Does something while a hop is played, at a moment of the page's clock. */
  const playing = (act: (hop: Hop) => void, atMs = performance.now()) => {
    how.upTo(atMs);
    const hop = hopNow();
    if (!hop || signals.phase.value !== "play") return;
    act(hop);
    how.invalidate();
  };
  const put = (hop: Hop, event: SessionEvent) => {
    actOn(hop, stepEvent(hop.attempt.session, event));
    hop.keeper.changed(true);
  };
  const use = (gearId: string) =>
    playing((hop) => {
      if (gearInUse(hop.attempt.session).id === gearId) return;
      steering.screws = false;
      const outcomes = stepEvent(hop.attempt.session, { kind: "use", gear: gearId });
      afterGear(hop);
      actOn(hop, outcomes);
      settle(hop);
      how.chooseSheet(hop);
      hop.keeper.changed(true);
    });
  const stepGear = (by: 1 | -1) =>
    playing((hop) => {
      const { gear } = hop.attempt.compiled.spec;
      const next = gear[gear.indexOf(gearInUse(hop.attempt.session).id) + by];
      if (next) use(next);
    });
  const tell = (words: string) => {
    signals.notice.value = words;
  };
  const setTime = (utcMs: number) =>
    playing((hop) => {
      const { night } = hop;
      const toMs = Math.min(night.mostMs, Math.max(night.leastMs, utcMs));
      if (signals.night.value === null) return tell(say("hop.timeIsSet"));
      if (toMs === signals.night.value.atMs) return tell(say("hop.nightEnds"));
      put(hop, { kind: "timeSet", toMs });
      Object.assign(hop.sun, sunNow(hop.attempt.session));
      followHour(hop);
      settle(hop);
      tell(say("hop.timeNow", { time: signals.night.value.words }));
    });
  const confirm = (hop: Hop) => {
    put(hop, { kind: "confirm" });
    how.chooseSheet(hop);
  };
  return {
    setTime,
    resetTime: () => playing(({ night }) => setTime(night.lessonMs)),
    stepTime: (by) => setTime((signals.night.value?.atMs ?? 0) + by * NIGHT_STEP_MS),
    setSkyTurns: (on) =>
      playing((hop) => {
        if (signals.skyTurns.value === null) return tell(say("hop.skyStands"));
        put(hop, { kind: "pause", on: !on });
        settle(hop);
        tell(say(on ? "hop.skyGoesOn" : "hop.skyStopped"));
      }),
    setScrews: (on) =>
      playing((hop) => {
        if (signals.screws.value === null) return tell(say("hop.noScrews"));
        steering.screws = on;
        settle(hop);
        tell(say(on ? "hop.atScrews" : "hop.atTube"));
      }),
    begin() {
      const hop = hopNow();
      if (!hop || signals.phase.value !== "briefing") return;
      signals.phase.value = "play";
      hop.ports.sound.setNight(true);
      settle(hop);
    },
    use,
    wider: () => stepGear(-1),
    narrower: () => stepGear(1),
    confirm: () =>
      playing((hop) => {
        const { lookFrom, hourStands } = hop;
        if (lookFrom) return;
        if (!hourStands) return confirm(hop);
        void hourStands.then((can) =>
          playing(() => {
            // Another hour was set while one waited for this one.
            if (hop.hourStands !== hourStands) return;
            if (can) confirm(hop);
            else tell(signals.hour.value?.words ?? say("hop.timeNotYet"));
          }),
        );
      }),
    claimHere: () => playing((hop) => put(hop, { kind: "claim", says: "here" })),
    claimNotSeen: () => playing((hop) => put(hop, { kind: "claim", says: "notSeen" })),
    restart: () => playing((hop) => put(hop, { kind: "restart" })),
    giveUp: () => playing((hop) => put(hop, { kind: "giveUp" })),
    takeHint: () =>
      playing((hop) => {
        const ready = signals.hints.value.find(({ state }) => state === "ready");
        if (!ready) return;
        const leg = legAt(hop.attempt.compiled, tubeDir(hop.attempt.session));
        put(hop, { kind: "hint", leg, grade: ready.grade });
        if (ready.grade === 3) how.chooseSheet(hop);
      }),
    setLimit: (limitMag) =>
      playing((hop) => {
        const range = signals.limitRange.value;
        if (!range) return;
        signals.limitMag.value = Math.min(range.most, Math.max(range.least, limitMag));
        settle(hop);
      }),
    setCarry: (on) =>
      playing((hop) => {
        put(hop, { kind: "aid", aid: "carry", on });
        steering.carry = on;
        settle(hop);
      }),
    setAsInInstrument: (on) =>
      playing((hop) => {
        put(hop, { kind: "aid", aid: "asInInstrument", on });
        if (on) layAsInInstrument(hop);
        settle(hop);
      }),
    pinAt: (dir) =>
      playing((hop) => {
        const asked = signals.asksPin.value;
        signals.asksPin.value = false;
        signals.sheetMode.value = "turn";
        put(hop, { kind: "pin", at: masFromDir(dir) });
        if (asked) pinLanded(hop, dir);
        else signals.pins.value = [...signals.pins.value, { at: dir }];
        hop.ports.sound.play("pencil");
        settle(hop);
      }),
    leavePin: () =>
      playing(() => {
        signals.asksPin.value = false;
        signals.sheetMode.value = "turn";
      }),
    drawPencil: (dirs: readonly Dir[]) =>
      playing((hop) => {
        signals.pencil.value = [...signals.pencil.value, dirs];
        for (const dir of [dirs[0], dirs.at(-1)]) if (dir) put(hop, { kind: "pencil", at: masFromDir(dir) });
      }),
    rubOut: () => {
      signals.pencil.value = signals.pencil.value.slice(0, -1);
    },
    sheetTurned: (view) =>
      playing((hop) => {
        signals.sheetView.value = view;
        const page = signals.page.value;
        if (!page) return;
        const turnMilliRad = Math.round(view.turnRad * 1000);
        const scalePermille = Math.round(view.scale * 1000);
        put(hop, {
          kind: "chartView",
          turnMilliRad,
          flipped: view.flipped,
          scalePermille,
          centre: masFromDir(page.centre),
        });
        refreshAgreement(hop);
      }),
    drag: (dxPx, dyPx) => playing(() => steering.drag(dxPx, dyPx, how.fieldRadiusPx())),
    dragging: (on) =>
      playing((hop) => {
        signals.handOnField.value = on;
        if (on && !steering.screws) put(hop, { kind: "push", axis: "both" });
        else hop.facts.moved = true;
        settle(hop);
      }),
    steer: (right, up, fine, atMs) =>
      playing((hop) => {
        const began = (right !== 0 || up !== 0) && !steering.active;
        steering.steer(right, up, fine);
        if (began && !steering.screws) put(hop, { kind: fine ? "nudge" : "push", axis: "both" });
        else if (right === 0 && up === 0) hop.facts.moved = true;
      }, atMs),
  };
}
