/** A change of light goes through black, so that no eye that is used to the dark meets a bright page on the way. */

let veil: HTMLElement | null = null;
let pending: (() => void) | null = null;
/** Counts changes: a later one takes over from one whose light still comes up. */
let run = 0;

/** Until what was changed has been drawn. */
const drawn = () => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve)));

/** Moves the veil as its style says, however slow the page draws: done when it has come to its end and been drawn there. */
async function move(element: HTMLElement, goes: "down" | "up"): Promise<void> {
  element.dataset.goes = goes;
  await Promise.allSettled(element.getAnimations().map(({ finished }) => finished));
  await drawn();
}

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
  await move(veil, "down");
  pending?.();
  pending = null;
  await drawn();
  if (mine !== run) return;
  await move(veil, "up");
  if (mine !== run) return;
  delete veil.dataset.goes;
  root.dataset.lampSettled = "";
}
