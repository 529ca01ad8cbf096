/** Keys become acts of the play model: held ones, arrows among them, and the key table. */
import { actOfKey, type KeyAct } from "../keys.ts";
import { createHeldActs, type HeldAct, isHeld } from "./heldActs.ts";
import type { PlayModel } from "./model.ts";

/** What keys may ask beyond the model. */
export interface PageActs {
  readonly toSheet: () => void;
  readonly setPin: () => void;
}
type Model = Pick<
  PlayModel,
  | "steer"
  | "stareAt"
  | "lookBeside"
  | "wider"
  | "narrower"
  | "confirm"
  | "claimHere"
  | "claimNotSeen"
  | "restart"
  | "takeHint"
  | "stepTime"
  | "setSkyTurns"
  | "skyTurns"
  | "setScrews"
  | "screws"
  | "sheetTurned"
  | "sheetView"
  | "seeking"
  | "phase"
>;

const TURN_RAD = (5 * Math.PI) / 180;
const CLOSER = 1.5;
const SCALES = { least: 1, most: 6 } as const;
/** A key stares at what the tube points at. */
const MIDDLE = { x: 0, y: 0 } as const;

const ARROWS: Readonly<Record<string, readonly [right: -1 | 0 | 1, up: -1 | 0 | 1]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};
const signOf = (sum: number): -1 | 0 | 1 => (sum > 0 ? 1 : sum < 0 ? -1 : 0);

/** Arrows that are down, as one push. A key is taken as pressed and lifted when it was, however late the page comes to it. */
export function createHeldArrows(steer: Model["steer"]) {
  const down = new Set<string>();
  let fine = false;
  const tell = (atMs: number) => {
    let [right, up] = [0, 0];
    for (const key of down) {
      right += ARROWS[key]![0];
      up += ARROWS[key]![1];
    }
    steer(signOf(right), signOf(up), fine, atMs);
  };
  return {
    press(key: string, shift: boolean, atMs: number) {
      if (down.has(key) && fine === shift) return;
      down.add(key);
      fine = shift;
      tell(atMs);
    },
    /** Also for Shift, which comes and goes while an arrow is down. */
    lift(key: string, shift: boolean, atMs: number) {
      const changed = down.delete(key) || (down.size > 0 && fine !== shift);
      fine = shift;
      if (changed) tell(atMs);
    },
    release(atMs: number) {
      if (down.size === 0) return;
      down.clear();
      tell(atMs);
    },
  };
}

/** Keys of the whole page, heard elsewhere. */
type PageKey = "lamp" | "sound" | "help" | "find";
const isPages = (act: KeyAct): act is PageKey => act === "lamp" || act === "sound" || act === "help" || act === "find";

/** What a key does, arrows and the page's own keys apart. */
function actsOf(
  model: Model,
  page: PageActs,
): Readonly<Record<Exclude<KeyAct, "push" | "fine" | HeldAct | PageKey>, () => void>> {
  const turn = (byRad: number) => {
    const view = model.sheetView.value;
    model.sheetTurned({ ...view, turnRad: view.turnRad + byRad });
  };
  const zoom = (factor: number) => {
    const view = model.sheetView.value;
    const scale = Math.min(SCALES.most, Math.max(SCALES.least, view.scale * factor));
    model.sheetTurned({ ...view, scale, ...(scale === 1 ? { panX: 0, panY: 0 } : {}) });
  };
  return {
    wider: () => model.wider(),
    narrower: () => model.narrower(),
    confirm: () => model.confirm(),
    claim: () => (model.seeking.value ? model.confirm() : model.claimHere()),
    notSeen: () => model.claimNotSeen(),
    home: () => model.restart(),
    hint: () => model.takeHint(),
    flip: () => model.sheetTurned({ ...model.sheetView.value, flipped: !model.sheetView.value.flipped }),
    turnLeft: () => turn(-TURN_RAD),
    turnRight: () => turn(TURN_RAD),
    closer: () => zoom(CLOSER),
    further: () => zoom(1 / CLOSER),
    later: () => model.stepTime(1),
    earlier: () => model.stepTime(-1),
    skyTurns: () => model.setSkyTurns(!model.skyTurns.value),
    screws: () => model.setScrews(!model.screws.value),
    pin: page.setPin,
    sheet: page.toSheet,
  };
}

const REPEATS: ReadonlySet<KeyAct> = new Set(["turnLeft", "turnRight", "later", "earlier"]);

/** A control that has its own use for the key: Enter and Space of buttons and links, arrows of sliders. */
function isTheirs(event: KeyboardEvent): boolean {
  const { target, key } = event;
  if (!(target instanceof Element)) return false;
  if (target.closest("input, select, textarea")) return true;
  return (key === "Enter" || key === " ") && target.closest("button, a, summary") !== null;
}

/** Listens to the window's keys for the play screen; the result stops it and lets all arrows go. */
export function listenToKeys(model: Model, page: PageActs, host: Window = window): () => void {
  const stop = new AbortController();
  const arrows = createHeldArrows((...how) => model.steer(...how));
  const held = createHeldActs((act, on) => {
    if (act === "avert") model.lookBeside(on);
    else model.stareAt(on ? MIDDLE : null);
  });
  const release = (atMs: number) => {
    arrows.release(atMs);
    held.release();
  };
  const does = actsOf(model, page);
  const onDown = (event: KeyboardEvent) => {
    if (event.defaultPrevented || isTheirs(event)) return;
    const act = actOfKey(event);
    if (!act || isPages(act) || model.phase.value !== "play") return;
    event.preventDefault();
    if (act === "push" || act === "fine") arrows.press(event.key, event.shiftKey, event.timeStamp);
    else if (isHeld(act)) held.press(event.key, act);
    else if (!event.repeat || REPEATS.has(act)) does[act]();
  };
  const onUp = (event: KeyboardEvent) => {
    arrows.lift(event.key, event.shiftKey, event.timeStamp);
    held.lift(event.key);
  };
  const options = { signal: stop.signal };
  host.addEventListener("keydown", onDown, options);
  host.addEventListener("keyup", onUp, options);
  host.addEventListener("blur", (event) => release(event.timeStamp), options);
  host.document.addEventListener("visibilitychange", (event) => release(event.timeStamp), options);
  return () => {
    stop.abort();
    release(performance.now());
  };
}
