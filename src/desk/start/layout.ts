/** Where barrel and words of the start page lie, CSS px. */
import type { Barrel } from "../play/geometry.ts";

/** `wide`: words beside the barrel; `stacked`: below it, the name above it. */
export interface StartLayout {
  readonly kind: "wide" | "stacked";
  readonly barrel: Barrel;
  readonly type: number;
  readonly column: { readonly left: number; readonly top: number; readonly width: number };
  /** The half-hidden sheet; null where there is no room. */
  readonly sheet: { readonly x: number; readonly y: number; readonly scale: number } | null;
}
const DRAWN = { width: 1440, height: 900 } as const;
const LEAST_TYPE = 0.85;
const LEAST_OUTER = 120;

function wide(width: number, height: number): StartLayout {
  const u = Math.min(height / DRAWN.height, width / DRAWN.width);
  const left = (width - DRAWN.width * u) / 2;
  const top = (height - DRAWN.height * u) / 2;
  const type = Math.max(LEAST_TYPE, Math.min(1.5, u));
  return {
    kind: "wide",
    barrel: { x: left + 452 * u, y: top + 450 * u, fieldPx: 372 * u, rimPx: 52 * u },
    type,
    column: {
      left: left + 930 * u,
      top: Math.max(20, top + 60 * u),
      width: Math.min(width - left - 930 * u - 24, 446 * Math.max(u, type)),
    },
    sheet: { x: left + 772 * u, y: top + 836 * u, scale: u },
  };
}

function stacked(width: number, height: number): StartLayout {
  const outer = Math.max(LEAST_OUTER, Math.min((width - 24) / 2, height * 0.24, 300));
  const rimPx = Math.max(34, outer * 0.17);
  const top = width < 760 ? 128 : 150;
  const columnWidth = Math.max(240, Math.min(560, width - 40));
  return {
    kind: "stacked",
    barrel: { x: width / 2, y: top + outer, fieldPx: outer - rimPx, rimPx },
    type: 1,
    column: { left: (width - columnWidth) / 2, top: top + 2 * outer + 22, width: columnWidth },
    sheet: null,
  };
}

export const startLayout = (width: number, height: number): StartLayout =>
  width >= 1000 && width > height * 1.15 ? wide(width, height) : stacked(width, height);
