/** What the whole page shares: which screen, which lamp, sound, and what the reader's machine wishes. */
import { effect, signal } from "@preact/signals";
import { isChanging, throughBlack } from "./throughBlack.ts";

export type Screen =
  | { readonly kind: "start" }
  | { readonly kind: "play"; readonly lessonId: string }
  | { readonly kind: "report"; readonly attemptId: string }
  /** A lesson's hop sheet, for printing. */
  | { readonly kind: "print"; readonly lessonId: string }
  /** A catalogue of the reader's own. */
  | { readonly kind: "catalogue" }
  /** The reader's own screen: what shows on it, and how large. */
  | { readonly kind: "screen" }
  /** The lesson bench; `trying`: the lesson that lies on it is hopped. */
  | { readonly kind: "bench"; readonly trying: boolean };
export type Language = "en" | "de";
export type LampKind = "normal" | "red" | "amber";

export const screen = signal<Screen>({ kind: "start" });
export const lamp = signal<LampKind>("normal");
/** Brightness of text under the red and amber lamps: greatest value of the red channel, 170 .. 235. */
export const lampLevel = signal(170);
export const soundOn = signal(true);
export const volume = signal(0.7);
/** The language that the reader chose; null where the browser is asked. */
export const chosenLanguage = signal<Language | null>(null);
export const keysShown = signal(false);
/** The sky of free practice, by a name of core/lesson/siteSkies.ts; any other is taken for the usual one. */
export const freeSky = signal("");

const still = matchMedia("(prefers-reduced-motion: reduce)");
export const reducedMotion = signal(still.matches);
still.addEventListener("change", ({ matches }) => {
  reducedMotion.value = matches;
});

/** Size of the window, CSS px. */
export const windowSize = signal({ width: innerWidth, height: innerHeight });
addEventListener("resize", () => {
  windowSize.value = { width: innerWidth, height: innerHeight };
});

/** One thing at a time: the field or the sheet. */
export const isPhone = () => windowSize.value.width < 760;

const ROUTES: readonly [RegExp, (part: string) => Screen][] = [
  [/^#\/lesson\/([\w.-]+)$/, (lessonId) => ({ kind: "play", lessonId })],
  [/^#\/print\/([\w.-]+)$/, (lessonId) => ({ kind: "print", lessonId })],
  [/^#\/report\/([\w.-]+)$/, (attemptId) => ({ kind: "report", attemptId })],
  [/^#\/(catalogue)$/, () => ({ kind: "catalogue" })],
  [/^#\/(screen)$/, () => ({ kind: "screen" })],
  [/^#\/(bench|bench\/try)$/, (part) => ({ kind: "bench", trying: part !== "bench" })],
];

/** The screen that an address names; the start page where it names none. */
export function screenOf(hash: string): Screen {
  for (const [pattern, make] of ROUTES) {
    const part = pattern.exec(hash)?.[1];
    if (part) return make(part);
  }
  return { kind: "start" };
}

export const hashOf = (one: Screen): string => {
  if (one.kind === "print") return `#/print/${one.lessonId}`;
  if (one.kind === "play") return `#/lesson/${one.lessonId}`;
  if (one.kind === "catalogue" || one.kind === "screen") return `#/${one.kind}`;
  if (one.kind === "bench") return one.trying ? "#/bench/try" : "#/bench";
  return one.kind === "report" ? `#/report/${one.attemptId}` : "#/";
};

/** A lesson is being tried from the bench, where nothing is kept. */
export const isTry = (): boolean => screen.value.kind === "bench";

/** Where "back" leads from a hop: to the bench from a try, else to the start page. */
export const homeHash = (): string => hashOf(isTry() ? { kind: "bench", trying: false } : { kind: "start" });

/** Goes to a screen; the browser's own back and forward work. */
export function goTo(next: Screen): void {
  if (location.hash === hashOf(next)) screen.value = next;
  else location.hash = hashOf(next);
}

addEventListener("hashchange", () => {
  keysShown.value = false;
  screen.value = screenOf(location.hash);
});

/** Where a change of lamp that is under way leads to. */
let nextToLight: LampKind = "normal";
/** The next lamp in turn: normal, red, amber. */
export function nextLamp(): void {
  const order: readonly LampKind[] = ["normal", "red", "amber"];
  const from = isChanging() ? nextToLight : lamp.value;
  nextToLight = order[(order.indexOf(from) + 1) % order.length]!;
  throughBlack(() => {
    lamp.value = nextToLight;
  });
}
document.documentElement.dataset.lampSettled = "";

const level = (channel: number) => Math.round(channel).toString(16).padStart(2, "0");
/** Text and hand of a dim lamp, as bright as the reader set it. */
const BRIGHT_TOKENS = { "--bone": 1, "--hand": 1, "--focus": 1, "--ring": 1, "--bone-2": 140 / 170 } as const;

effect(() => {
  const root = document.documentElement;
  root.dataset.lamp = lamp.value;
  for (const [name, share] of Object.entries(BRIGHT_TOKENS)) {
    const red = lampLevel.value * share;
    const colour = `#${level(red)}${level(lamp.value === "amber" ? red / 2 : 0)}00`;
    if (lamp.value === "normal") root.style.removeProperty(name);
    else root.style.setProperty(name, colour);
  }
});
