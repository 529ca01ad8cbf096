/** What runs out of the window to a side, or is cut off there by what holds it. */
import type { Page } from "@playwright/test";

/** A line for each such element. The sheet may: it is moved about. */
export const cutOff = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const isAside = (element: Element) =>
      element.closest(".sheet, .sheet-below, .hidden-words, svg, canvas") !== null || !element.checkVisibility();
    const nameOf = (element: Element) =>
      `${element.tagName} ${element.className} ${element.textContent?.trim().slice(0, 40) ?? ""}`;
    return [...document.querySelectorAll("body *")].flatMap((element) => {
      if (isAside(element) || getComputedStyle(element).clipPath !== "none") return [];
      const { left, right, width } = element.getBoundingClientRect();
      const isOut = width > 0 && element.matches("button, a, input, textarea, p, li, h1, h2, h3, td, th");
      if (isOut && (left < -0.5 || right > innerWidth + 0.5)) return [`out: ${nameOf(element)}`];
      const isCut = element.matches("button, a, p, li, h1, h2, h3, .words, .panel, .column");
      return isCut && element.scrollWidth > element.clientWidth + 1 && element.clientWidth > 0
        ? [`cut: ${nameOf(element)}`]
        : [];
    });
  });
