/** A change of light goes through black, so that no eye that is used to the dark meets a bright page on the way. */

const VEIL_MS = { down: 200, up: 500 } as const;

let veil: HTMLElement | null = null;
let pending: (() => void) | null = null;
/** Counts changes: a later one takes over from one whose light still comes up. */
let run = 0;

const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));
/** Until what was changed has been drawn. */
const drawn = () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));

function hang(): HTMLElement {
  const element = document.createElement("div");
  element.className = "lamp-veil";
  element.ariaHidden = "true";
  document.body.append(element);
  // Its first darkening is to start from clear.
  void getComputedStyle(element).opacity;
  return element;
}

/**
 * Makes a change behind a black veil: down, the change, up. Another change while the veil goes down takes the place of the
 * first. `data-lamp-settled` stands on the root while no veil is up.
 */
export function throughBlack(change: () => void): void {
  const isGoingDown = isChanging();
  pending = change;
  if (!isGoingDown) void carryOut();
}

/** A change waits for the veil to be down. */
export const isChanging = (): boolean => pending !== null;

async function carryOut(): Promise<void> {
  const root = document.documentElement;
  veil ??= hang();
  const mine = ++run;
  delete root.dataset.lampSettled;
  veil.dataset.goes = "down";
  await wait(VEIL_MS.down);
  pending?.();
  pending = null;
  await drawn();
  if (mine !== run) return;
  veil.dataset.goes = "up";
  await wait(VEIL_MS.up);
  if (mine !== run) return;
  delete veil.dataset.goes;
  root.dataset.lampSettled = "";
}
