/** A hop on the page: sky, session, stage and panels brought together behind the model that the panels read. */
import { effect } from "@preact/signals";
import { DEG, separationRad } from "#core/celestial/vector.ts";
import { seenField } from "#core/field/seenField.ts";
import { withFurther } from "#core/field/withFurther.ts";
import type { Lesson } from "#core/lesson/types.ts";
import { fieldRadiusPlane } from "#core/optics/viewFrame.ts";
import type { Dir, Gear } from "#core/seams/index.ts";
import { gearInUse, isAtStand, looksByEye, pointing, tick } from "#core/session/session.ts";
import { tilesAhead } from "#core/sky/catalogue/tilesOfCone.ts";
import { createStage, type Reach, type Stage, type StageLayout } from "../../stage/index.ts";
import { SPILL_CSS_PX } from "../../stage/reach.ts";
import { isSeeded } from "../app/lessonOf.ts";
import { isPhone, lamp, lampLevel, reducedMotion } from "../app/state.ts";
import { screenReachNow, starScaleNow } from "../screen/fit.ts";
import { say } from "../words/say.ts";
import { createActs } from "./acts.ts";
import type { Attempt } from "./attempt.ts";
import type { Bodies } from "./bodies.ts";
import { createCanvasReach } from "./canvasReach.ts";
import { createClock } from "./clock.ts";
import { darkOn } from "./darkOn.ts";
import { createEyeActs } from "./eyeActs.ts";
import { createGrain, grainOn, hasGrain } from "./grain.ts";
import type { Hop, Ports } from "./hop.ts";
import { createLoading } from "./loading.ts";
import type { PlayModel } from "./model.ts";
import { animate, STOP_OPENS_PX } from "./motions.ts";
import { actOn } from "./outcomes.ts";
import { type Apart, hasOpenSky, setAir, setNow } from "./picture.ts";
import { refreshCompass, refreshWords } from "./refresh.ts";
import { turnScrews } from "./screws.ts";
import { createSignals } from "./signals.ts";
import { milkyWayOver, type OpenSky, openSkyOf, solarSystemAt } from "./skies.ts";
import { startHop } from "./starting.ts";
import { createSteering } from "./steering.ts";
import { twinkleOn, twinkleSeconds, twinkleWaitMs } from "./twinkle.ts";

/** A right claim is looked at for so long before the report; any other end is not. */
const AFTER_MS = { right: 3000, other: 600 } as const;
const AHEAD_FIELDS = 1.5;
const LOOK_AHEAD_MS = 250;
/** A notice stands so long; a question stands until it is answered. */
const NOTICE_MS = 9000;
/** The hand's mark lingers after a push; what was pushed is kept for later. */
const SETTLES_MS = { mark: 700, kept: 2000 } as const;

export interface PlayHow {
  readonly lesson: Lesson;
  readonly ports: Ports;
  /** Instead of the lesson's own sky. */
  readonly sky?: OpenSky | undefined;
  /** Nothing is sought: a look round that begins here, and that the reader ends by leaving. */
  readonly lookFrom?: Dir | undefined;
  /** The attempt has ended. */
  readonly onEnded: (attempt: Attempt) => void;
}

const chooseSheet = (hop: Hop): Promise<void> =>
  import("./sheetPage.ts").then(({ chooseSheet: choose }) => choose(hop));

/** Creates the model of a hop; it loads at once and plays when `begin` is called. */
export function createPlay({ lesson, ports, onEnded, lookFrom, sky = openSkyOf(lesson) }: PlayHow): PlayModel {
  const signals = createSignals(lesson);
  const steering = createSteering();
  let hop: Hop | null = null;
  let stage: Stage | null = null;
  let layout: StageLayout | null = null;
  /** The canvas where the sky is open. */
  let open: Reach | null = null;
  /** When what last happened, by the page's clock. */
  const at = { movedMs: 0, aheadMs: 0, noticedMs: 0 };
  let ticks = 0;
  let noticed: string | null = null;
  let lastPointing: Dir | null = null;
  /** The screen is another one by now: what comes later is not wanted. */
  let isLeft = false;

  let bodies: Bodies | null = null;
  const grain = createGrain(sky, () => clock.invalidate());
  const shown = withFurther(grain.source, () => bodies?.points() ?? null);
  const bringBodies = async () => {
    const { createBodies } = await import("./bodies.ts");
    bodies = createBodies(lesson.place, solarSystemAt, clock.invalidate);
    clock.invalidate();
  };

  let apart: Apart | null = null;
  const bringApart = async ({ picture }: Hop) => {
    apart = (await import("#core/field/closeStars.ts")).closeStars;
    // What was looked at before is looked at again.
    picture.objectsVersion = Number.NaN;
    clock.invalidate();
  };

  const bringMilkyWay = async ({ picture, attempt: { night, compiled } }: Hop) => {
    picture.glow = await milkyWayOver(compiled.spec.sky, night.zenithMu);
    clock.invalidate();
  };

  const bringRivals = async (one: Hop) => {
    const { tellApart } = await import("../seed/tellApart.ts");
    one.tellApart = await tellApart(one);
  };

  const bringEye = async (one: Hop) => {
    const { createEye } = await import("./eye.ts");
    if (!isLeft) one.eye = createEye(one, clock);
  };

  const loading = createLoading(sky.source, () => {
    const why = sky.failures()[0];
    signals.trouble.value = why ? say("hop.skyTrouble", { why }) : null;
    clock.invalidate();
  });

  const step = () => {
    if (!hop || signals.phase.value !== "play") return;
    const hand = steering.take(hop.attempt.session);
    if (steering.screws) turnScrews(hop, ++ticks);
    if (hand.axis1 !== 0 || hand.axis2 !== 0) at.movedMs = performance.now();
    actOn(hop, tick(hop.attempt.session, hand));
  };

  const lookAhead = (from: Dir, to: Dir, fieldRad: number, nowMs: number) => {
    if (lesson.sky !== "catalogue" || nowMs - at.aheadMs < LOOK_AHEAD_MS) return;
    at.aheadMs = nowMs;
    const way: Dir = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
    loading.ahead(tilesAhead(to, way, AHEAD_FIELDS * fieldRad, signals.limitMag.value));
  };

  /**
   * What follows from the tube's motion since the frame before: tiles ahead, the rub, the hand's mark.
   * @returns whether it moved, or a hand is on it
   */
  const followMotion = ({ attempt }: Hop, gear: Gear, nowMs: number): boolean => {
    const now = pointing(attempt.session);
    const byEye = looksByEye(attempt.session);
    const movedRad = lastPointing ? separationRad(lastPointing, now) : 0;
    const fieldRad = gear.fieldDeg * DEG;
    if (movedRad > 0 && lastPointing) lookAhead(lastPointing, now, fieldRad, nowMs);
    lastPointing = now;
    ports.sound.moving(byEye ? 0 : (movedRad / fieldRad) * 60);
    const pushing = steering.active || nowMs - at.movedMs < SETTLES_MS.mark;
    const mark = signals.handMark.value;
    if (byEye || steering.screws) signals.handMark.value = null;
    else if (mark?.pushing !== pushing || mark.towardDeg !== steering.towardDeg)
      signals.handMark.value = { towardDeg: steering.towardDeg, pushing };
    return movedRad > 0 || steering.active;
  };
  /** In how many ms something is to be seen again where nothing moves: the hand's mark goes, stars twinkle. */
  const waitMsAtStand = (on: Stage, nowMs: number): number | null => {
    const markMs = signals.handMark.value?.pushing ? at.movedMs + SETTLES_MS.mark - nowMs : null;
    const starsMs = twinkleWaitMs(on);
    if (markMs === null) return starsMs;
    return Math.max(1, starsMs === null ? markMs : Math.min(markMs, starsMs));
  };

  const canvasReach = createCanvasReach();
  const reachNow = (fieldPx: number): Reach => {
    const opens = hop && hop.picture.stopOpenCssPx > 0 ? STOP_OPENS_PX : 0;
    return canvasReach(fieldPx, opens, hop && hasOpenSky(gearInUse(hop.attempt.session)) ? open : null);
  };
  /** The canvas changes when the stop begins to open, and between an open sky and an instrument. */
  const makeRoom = () => {
    if (!layout) return;
    const reachCssPx = reachNow(layout.fieldRadiusCssPx);
    if (layout.reachCssPx === reachCssPx) return;
    layout = { ...layout, reachCssPx };
    stage?.resize(layout);
  };
  /** Stars are wanted as far as the canvas shows sky. */
  const starsRad = (gear: Gear): number => {
    if (!layout || layout.reachCssPx !== open) return (gear.fieldDeg / 2) * DEG;
    const { fieldRadiusCssPx, rimCssPx } = layout;
    const plane = (fieldRadiusPlane(gear) * (fieldRadiusCssPx + rimCssPx + SPILL_CSS_PX)) / fieldRadiusCssPx;
    return 2 * Math.atan(plane / 2);
  };

  let skyShown = () => {};
  /** What is not the sky waits for its first picture. */
  const skyIsShown = new Promise<void>((resolve) => {
    skyShown = resolve;
  });

  const draw = (nowMs: number): number | null => {
    if (!hop || !stage || !layout) return null;
    const { session, seeing } = hop.attempt;
    const gear = gearInUse(session);
    const { field, picture } = hop;
    bodies?.follow(session);
    makeRoom();
    const { objects } = sky;
    seenField({ pointing: pointing(session), gear, starsRad: starsRad(gear), source: shown, seeing, objects }, field);
    loading.bring(field.missing, field.version);
    const moving = animate(hop, nowMs, reducedMotion.value);
    setNow(picture, session, field, lamp.value, lampLevel.value, hop.sun, bodies, apart);
    setAir(picture, session, twinkleSeconds(stage, nowMs));
    const screen = screenReachNow.value;
    picture.starLift = screen.lift;
    picture.starLeast = screen.least;
    hop.eye?.look(nowMs, layout.fieldRadiusCssPx);
    stage.draw(picture);
    skyShown();
    refreshCompass(hop);
    const moved = followMotion(hop, gear, nowMs);
    const drifts = session.compiled.spec.drift && signals.phase.value === "play";
    return moving || moved || drifts || !isAtStand(session) ? 0 : waitMsAtStand(stage, nowMs);
  };

  const idle = () => {
    if (!hop || signals.phase.value !== "play") return;
    const nowMs = performance.now();
    refreshWords(hop);
    signals.grain.value = hasGrain(hop.field.blocks);
    if (signals.notice.value !== noticed) [noticed, at.noticedMs] = [signals.notice.value, nowMs];
    else if (noticed && !signals.asksPin.value && nowMs - at.noticedMs > NOTICE_MS) signals.notice.value = null;
    if (at.movedMs > 0 && nowMs - at.movedMs < SETTLES_MS.kept) hop.keeper.changed();
  };
  const clock = createClock(step, draw, idle);
  const stopWatchingLamp = effect(() => {
    void [lamp.value, lampLevel.value, grainOn.value, twinkleOn.value, darkOn.value, reducedMotion.value];
    clock.invalidate();
  });

  const load = async () => {
    const table = { lesson, signals, ports, sky, lookFrom, loading, steering, invalidate: clock.invalidate };
    const started = await startHop(table, ({ attempt, motion }) => {
      setTimeout(() => onEnded(attempt), motion.rightMs > 0 ? AFTER_MS.right : AFTER_MS.other);
    });
    hop = started.hop;
    // The words of a hop that is taken up stand from its first picture: rows that came later would move under the hand.
    if (started.resumed) refreshWords(hop);
    signals.phase.value = started.resumed ? "play" : "briefing";
    clock.start();
    await skyIsShown;
    // Drawn is not yet painted: the frame after it comes when it is.
    await new Promise((resolve) => requestAnimationFrame(resolve));
    await chooseSheet(hop);
    // Practice skies have none, and beside the reader's own stars none are invented. Where a file does not come, the hop goes
    // on without.
    const isReal = lesson.sky === "catalogue";
    const hasGrains = isReal && sky.source.ref.kind === "catalogue";
    await Promise.allSettled([
      bringEye(hop),
      bringMilkyWay(hop),
      bringApart(hop),
      ...(isReal ? [bringBodies()] : []),
      ...(hasGrains ? [grain.begin()] : []),
      ...(isSeeded(lesson.id) ? [bringRivals(hop)] : []),
    ]);
  };
  void load().catch((error: unknown) => {
    signals.phase.value = "failed";
    signals.trouble.value = error instanceof Error ? error.message : String(error);
  });

  const acts = createActs(() => hop, signals, steering, {
    chooseSheet: (one) => void chooseSheet(one),
    invalidate: clock.invalidate,
    upTo: clock.upTo,
    fieldRadiusPx: () => layout?.fieldRadiusCssPx ?? 1,
  });

  return {
    lesson,
    isLook: lookFrom !== undefined,
    ownStars: sky.source.ref.kind === "imported",
    ...signals,
    ...acts,
    ...createEyeActs(signals),
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
    resize(fieldRadiusCssPx, rimCssPx, reach) {
      open = reach;
      layout = {
        reachCssPx: reachNow(fieldRadiusCssPx),
        devicePixelRatio,
        fieldRadiusCssPx,
        rimCssPx,
        starScale: (isPhone() ? 0.86 : 1) * starScaleNow(),
      };
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
      isLeft = true;
      hop?.eye?.stop();
      clock.stop();
      loading.stop();
      hop?.keeper.stop(signals.phase.value === "play");
      ports.sound.setNight(false);
      ports.sound.moving(0);
      stage?.destroy();
      stage = null;
    },
  };
}
