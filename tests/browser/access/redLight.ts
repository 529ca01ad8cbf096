/** Light as an eye has it that sees by red alone: contrast on the red channel, and pictures without green and blue. */
import type { Page } from "@playwright/test";
import { readPng } from "../play/png.ts";

/** Text tokens and the grounds they stand on. */
const PAIRS = [
  ["--bone", "--table"],
  ["--bone", "--rim"],
  ["--bone", "--rim-lit"],
  ["--bone", "--rim-2"],
  ["--bone-2", "--table"],
  ["--bone-2", "--rim"],
  ["--ink", "--paper"],
  ["--ink", "--paper-low"],
  ["--ink", "--bone"],
] as const;

/** A channel's light, 0 .. 1, from its display value (IEC 61966-2-1). */
const linear = (value: number): number => {
  const share = value / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};

/** Contrast of two red channels, 1 .. 21: as WCAG 2 has it, for light that is red alone. */
export function redContrast(a: number, b: number): number {
  const [low, high] = [linear(a), linear(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

/** Contrast of every pair of text and ground, by the tokens that hold now. */
export async function tokenContrasts(page: Page): Promise<Record<string, number>> {
  const names = [...new Set(PAIRS.flat())];
  const reds = await page.evaluate((wanted) => {
    const style = getComputedStyle(document.documentElement);
    return Object.fromEntries(
      wanted.map((name) => [name, Number.parseInt(style.getPropertyValue(name).trim().slice(1, 3), 16)]),
    );
  }, names);
  return Object.fromEntries(
    PAIRS.map(([text, ground]) => [`${text} on ${ground}`, redContrast(reds[text]!, reds[ground]!)]),
  );
}

interface Text {
  readonly words: string;
  readonly red: number;
  readonly ground: number;
}

/** Texts of the page with the red of their colour and of the flat ground behind them; the lettering of drawings is apart. */
export const textsOnGrounds = (page: Page): Promise<Text[]> =>
  page.evaluate(() => {
    const redOf = (colour: string) => Number(/rgba?\((\d+)/.exec(colour)?.[1] ?? Number.NaN);
    const isClear = (colour: string) => /^rgba.*, 0\)$/.test(colour);
    const groundOf = (element: Element | null): number | null => {
      if (!element) return 0;
      const { backgroundColor, backgroundImage } = getComputedStyle(element);
      if (backgroundImage !== "none") return null;
      return isClear(backgroundColor) ? groundOf(element.parentElement) : redOf(backgroundColor);
    };
    return [...document.querySelectorAll("body *")].flatMap((element) => {
      if (element.closest("svg, .sheet, .hidden-words, script, style") || !element.checkVisibility()) return [];
      const words = [...element.childNodes].map((node) => (node.nodeType === 3 ? node.textContent : "")).join("");
      const ground = groundOf(element);
      if (words.trim() === "" || ground === null) return [];
      return [{ words: words.trim(), red: redOf(getComputedStyle(element).color), ground }];
    });
  });

/** The greatest value of each channel in what the window shows. */
export async function greatest(page: Page): Promise<{ r: number; g: number; b: number }> {
  const { bytes, channels } = readPng(await page.screenshot());
  let [r, g, b] = [0, 0, 0];
  for (let i = 0; i < bytes.length; i += channels) {
    r = Math.max(r, bytes[i]!);
    g = Math.max(g, bytes[i + 1]!);
    b = Math.max(b, bytes[i + 2]!);
  }
  return { r, g, b };
}
