/**
 * Time for a session: steps of 20 ms as the wall clock goes, frames only while something is to be seen. A still sky costs no
 * frames, a twinkling one few; the session is brought up to date four times a second.
 */

const STEP_MS = 20;
/** A tab that wakes up is not asked for more steps than these at once. */
const MOST_STEPS = 5 * 60 * 50;
const IDLE_MS = 250;

export interface Clock {
  /** Something is to be drawn. */
  invalidate(): void;
  /**
   * Brings the session up to a moment of the page's clock, ms, before something is done to it: what is done later than that
   * moment, a key that comes up while a long frame is drawn, is taken as done when it was.
   */
  upTo(atMs: number): void;
  start(): void;
  stop(): void;
}

/**
 * @param step one step of the session
 * @param draw one frame; tells in how many ms the next is wanted: 0 with the display's next, null for none
 * @param idle called four times a second whether or not anything moves
 */
export function createClock(step: () => void, draw: (nowMs: number) => number | null, idle: () => void): Clock {
  let frame = 0;
  let timer: ReturnType<typeof setInterval> | undefined;
  let wait: ReturnType<typeof setTimeout> | undefined;
  let lastMs = 0;
  let owedMs = 0;

  const catchUp = (nowMs: number) => {
    owedMs += Math.max(0, nowMs - lastMs);
    lastMs = Math.max(lastMs, nowMs);
    let steps = Math.min(MOST_STEPS, Math.floor(owedMs / STEP_MS));
    owedMs -= steps * STEP_MS;
    if (steps === MOST_STEPS) owedMs = 0;
    while (steps-- > 0) step();
  };
  const onFrame = (nowMs: number) => {
    frame = 0;
    catchUp(nowMs);
    const waitMs = draw(nowMs);
    if (waitMs === 0) request();
    else if (waitMs !== null) wait = setTimeout(request, waitMs);
  };
  const request = () => {
    clearTimeout(wait);
    if (timer !== undefined) frame ||= requestAnimationFrame(onFrame);
  };
  return {
    invalidate: request,
    upTo(atMs) {
      if (timer !== undefined) catchUp(Math.min(atMs, performance.now()));
    },
    start() {
      if (timer !== undefined) return;
      lastMs = performance.now();
      timer = setInterval(() => {
        if (frame === 0) catchUp(performance.now());
        idle();
      }, IDLE_MS);
      request();
    },
    stop() {
      clearInterval(timer);
      timer = undefined;
      clearTimeout(wait);
      cancelAnimationFrame(frame);
      frame = 0;
    },
  };
}
