/** A hop on the page: sky, session, stage and panels brought together behind the model that the panels read. */

import { effect } from "@preact/signals";
import { sunDir } from "#core/celestial/bodies.ts";
import { altAzFromDir } from "#core/celestial/frames.ts";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { hopPage, pageCone, printPage, widePage } from "#core/chart/hopPages.ts";
import { seenField } from "#core/field/seenField.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { InputError } from "#core/seams/errors.ts";
import type { Dir } from "#core/seams/index.ts";
import { gearInUse, horizonOf, looksByEye, pointing, tick, viewOf } from "#core/session/session.ts";
import { tilesAhead } from "#core/sky/catalogue/tilesOfCone.ts";
import { createStage, type Stage, type StageLayout } from "../../stage/index.ts";
import { isPhone, lamp, lampLevel, reducedMotion } from "../app/state.ts";
import { say } from "../words/say.ts";
import { type Acts, createActs } from "./acts.ts";
import { type Attempt, resumeAttempt, startAttempt } from "./attempt.ts";
import { createClock } from "./clock.ts";
import { createHop, type Hop, type Ports } from "./hop.ts";
import { createKeeper } from "./keep.ts";
import { createLoading } from "./loading.ts";
import type { PlayModel } from "./model.ts";
import { actOn, settle } from "./outcomes.ts";
import { setNow } from "./picture.ts";
import { refreshCompass, refreshGear, refreshWords } from "./refresh.ts";
import { createSignals } from "./signals.ts";
import { openSky } from "./skies.ts";
import { createSteering } from "./steering.ts";

/** Durations of the picture's own motions, ms. */
const MOTION = { change: 420, right: 900, proof: 1000, proofHold: 400 } as const;
const STOP_OPENS_PX = 12;
/** The canvas reaches so far beyond the field stop, for it to open. */
const ROOM_TO_OPEN_PX = 14;
const RIGHT_BRIGHTENS_MAG = 0.3;
const AFTER_RIGHT_MS = 3000;
const AHEAD_FIELDS = 1.5;
const LOOK_AHEAD_MS = 250;
/** A notice stands so long; a question stands until it is answered. */
const NOTICE_MS = 9000;

export interface PlayHow {
  readonly lesson: Lesson;
  readonly ports: Ports;
  /** The attempt has ended and was kept. */
  readonly onEnded: (attempt: Attempt) => void;
}

/** Creates the model of a hop; it loads at once and plays when `begin` is called. */
export function createPlay({ lesson, ports, onEnded }: PlayHow): PlayModel {
  const signals = createSignals(lesson);
  const sky = openSky(lesson.sky);
  const steering = createSteering();
  let hop: Hop | null = null;
  let stage: Stage | null = null;
  let layout: StageLayout | null = null;
  let movedMs = 0;
  let noticed: string | null = null;
  let noticedMs = 0;
  let aheadMs = 0;
  let lastPointing: Dir | null = null;
  const still = () => reducedMotion.value;

  const loading = createLoading(sky.source, () => {
    const why = sky.failures()[0];
    signals.trouble.value = why ? say("hop.skyTrouble", { why }) : null;
    clock.invalidate();
  });

  const step = () => {
    if (!hop || signals.phase.value !== "play") return;
    const hand = steering.take(hop.attempt.session);
    if (hand.axis1 !== 0 || hand.axis2 !== 0) movedMs = performance.now();
    actOn(hop, tick(hop.attempt.session, hand));
  };

  /** Motions of the picture; true while one runs. */
  const animate = (one: Hop, nowMs: number): boolean => {
    const { picture, motion } = one;
    const share = (startMs: number, lengthMs: number) =>
      startMs === 0 || still() ? 1 : Math.min(1, (nowMs - startMs) / lengthMs);
    const changed = share(motion.changedMs, MOTION.change);
    picture.light = changed * (2 - changed);
    const right = motion.rightMs === 0 ? 0 : share(motion.rightMs, MOTION.right);
    picture.stopOpenCssPx = STOP_OPENS_PX * right;
    picture.limitMag = signals.limitMag.value + RIGHT_BRIGHTENS_MAG * right;
    const proofMs = motion.proofMs === 0 ? Number.POSITIVE_INFINITY : nowMs - motion.proofMs;
    picture.linesAlpha = Math.max(0, Math.min(1, 1 - (proofMs - MOTION.proofHold) / (MOTION.proof - MOTION.proofHold)));
    return changed < 1 || (right > 0 && right < 1) || proofMs < MOTION.proof + 50;
  };

  const draw = (nowMs: number): boolean => {
    const one = hop;
    if (!one || !stage || !layout) return false;
    const { session } = one.attempt;
    const { source, objects } = sky;
    const gear = gearInUse(session);
    seenField({ pointing: pointing(session), gear, source, seeing: one.attempt.seeing, objects }, one.field);
    loading.bring(one.field.missing, one.field.version);
    const moving = animate(one, nowMs);
    setNow(one.picture, session, one.field, lamp.value, lampLevel.value, one.sun);
    stage.draw(one.picture);
    refreshCompass(one);
    const now = pointing(session);
    const movedRad = lastPointing ? separationRad(lastPointing, now) : 0;
    const fieldRad = gear.fieldDeg * DEG;
    if (movedRad > 0 && lastPointing) lookAhead(one, lastPointing, now, fieldRad);
    ports.sound.moving(looksByEye(session) ? 0 : (movedRad / fieldRad) * 60);
    lastPointing = now;
    const pushing = steering.active || nowMs - movedMs < 700;
    const mark = looksByEye(session) ? null : { towardDeg: steering.towardDeg, pushing };
    if (mark?.pushing !== signals.handMark.value?.pushing || mark?.towardDeg !== signals.handMark.value?.towardDeg)
      signals.handMark.value = mark;
    return (
      moving || pushing || nowMs - movedMs < 1500 || (session.compiled.spec.drift && signals.phase.value === "play")
    );
  };

  const lookAhead = (one: Hop, from: Dir, to: Dir, fieldRad: number) => {
    const nowMs = performance.now();
    if (one.lesson.sky !== "catalogue" || nowMs - aheadMs < LOOK_AHEAD_MS) return;
    aheadMs = nowMs;
    const way: Dir = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    loading.ahead(tilesAhead(to, way, AHEAD_FIELDS * fieldRad, signals.limitMag.value));
  };

  const idle = () => {
    if (!hop || signals.phase.value !== "play") return;
    refreshWords(hop);
    if (signals.notice.value !== noticed) [noticed, noticedMs] = [signals.notice.value, performance.now()];
    else if (noticed && !signals.asksPin.value && performance.now() - noticedMs > NOTICE_MS)
      signals.notice.value = null;
    if (movedMs > 0 && performance.now() - movedMs < 2000) hop.keeper.changed();
  };
  const clock = createClock(step, draw, idle);
  const stopWatchingLamp = effect(() => {
    void [lamp.value, lampLevel.value];
    clock.invalidate();
  });

  const chooseSheet = async (one: Hop) => {
    const { kind } = gearInUse(one.attempt.session);
    const wide = (kind === "eye" || kind === "sight") && one.lesson.gear.use.length > 2;
    const { compiled } = one.attempt;
    const guess = wide ? widePage(compiled, []) : hopPage(compiled, []);
    const stars = await loading.whole(pageCone(guess), guess.limitMag);
    const page = wide ? widePage(compiled, stars.blocks) : hopPage(compiled, stars.blocks);
    const shown = !one.attempt.session.state.scored;
    const words = { anchor: say("hop.anchor"), target: say("hop.target") };
    signals.marks.value = printPage(page, compiled, one.sky, stars.blocks, {
      words,
      ways: lesson.level === "G" || shown,
    });
    signals.page.value = page;
    settle(one);
  };

  /** The attempt that a closed tab left of this lesson; one that cannot be read is left alone, and a fresh one begins. */
  const takenUp = async (): Promise<Attempt | null> => {
    const running = await ports.store.loadRunning(lesson.id);
    try {
      return running && resumeAttempt(lesson, sky, running, still());
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      return null;
    }
  };

  const load = async () => {
    const resumed = await takenUp();
    const attempt = resumed ?? (await startAttempt(lesson, sky, loading, still()));
    const { session } = attempt;
    const { altRad, azRad } = altAzFromDir(horizonOf(session), sunDir(attempt.compiled.spec.startMs));
    const ended = () => {
      const waitMs = one.motion.rightMs > 0 ? AFTER_RIGHT_MS : 600;
      setTimeout(() => onEnded(attempt), waitMs);
    };
    const keeper = createKeeper(ports.store, lesson.id, attempt);
    const needed = {
      lesson,
      signals,
      ports,
      sky,
      loading,
      attempt,
      steering,
      keeper,
      ended,
      sun: { altitudeRad: altRad, azimuthRad: azRad },
    };
    const one = createHop({ ...needed, invalidate: clock.invalidate }, (mark) => {
      signals.notice.value = say("hop.markReached", { mark });
    });
    hop = one;
    viewOf(session, one.picture.viewFromIcrs);
    refreshGear(one);
    signals.phase.value = resumed ? "play" : "briefing";
    clock.start();
    await chooseSheet(one);
  };
  void load().catch((error: unknown) => {
    signals.phase.value = "failed";
    signals.trouble.value = error instanceof Error ? error.message : String(error);
  });

  const acts: Acts = createActs(() => hop, signals, steering, {
    chooseSheet: (one) => void chooseSheet(one),
    invalidate: clock.invalidate,
    fieldRadiusPx: () => layout?.fieldRadiusCssPx ?? 1,
  });

  return {
    lesson,
    ...signals,
    ...acts,
    async mount(canvas) {
      try {
        stage = await createStage(canvas, { onContextRestored: clock.invalidate });
        if (layout) stage.resize(layout);
        clock.invalidate();
      } catch {
        signals.phase.value = "failed";
        signals.trouble.value = say("hop.noPicture");
      }
    },
    resize(fieldRadiusCssPx, rimCssPx) {
      const canvasCssPx = 2 * (fieldRadiusCssPx + ROOM_TO_OPEN_PX);
      layout = { canvasCssPx, devicePixelRatio, fieldRadiusCssPx, rimCssPx, starScale: isPhone() ? 0.86 : 1 };
      stage?.resize(layout);
      clock.invalidate();
    },
    retry() {
      sky.retry();
      signals.trouble.value = null;
      clock.invalidate();
    },
    unmount() {
      stopWatchingLamp();
      clock.stop();
      loading.stop();
      hop?.keeper.stop();
      ports.sound.setNight(false);
      ports.sound.moving(0);
      stage?.destroy();
      stage = null;
    },
  };
}
