/** The paper itself: a pool of light on toned stock with a little grain. */
import type { SheetLook } from "./look.ts";

const TILE_PX = 260;
let tile: HTMLCanvasElement | null = null;

/** Grain as black of varying alpha, made once; the same every time (mulberry32, seed 4). */
function grainTile(): HTMLCanvasElement {
  if (tile) return tile;
  tile = document.createElement("canvas");
  tile.width = TILE_PX;
  tile.height = TILE_PX;
  const ctx = tile.getContext("2d")!;
  const image = ctx.createImageData(TILE_PX, TILE_PX);
  let state = 4;
  const chance = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  for (let i = 3; i < image.data.length; i += 4)
    image.data[i] = 255 * Math.max(0, 0.275 * (chance() + chance() + chance() + chance()) - 0.28);
  ctx.putImageData(image, 0, 0);
  return tile;
}

/**
 * Paints light and grain over a canvas.
 * @param at middle of the pool, device px; @param perPx device px to a px of the pool's radius
 */
export function paintGround(
  ctx: CanvasRenderingContext2D,
  look: SheetLook,
  at: { readonly x: number; readonly y: number },
  perPx: number,
): void {
  const { width, height } = ctx.canvas;
  const light = ctx.createRadialGradient(at.x, at.y, 0, at.x, at.y, look.pool.radiusPx * perPx);
  for (const { at: share, colour } of look.pool.stops) light.addColorStop(share, colour);
  ctx.fillStyle = light;
  ctx.fillRect(0, 0, width, height);
  ctx.save();
  ctx.globalAlpha = look.grain;
  ctx.fillStyle = ctx.createPattern(grainTile(), "repeat")!;
  ctx.fillRect(0, 0, width, height);
  ctx.restore();
}
