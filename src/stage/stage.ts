/** The field as a picture: one canvas, drawn once for each call, and again when the context comes back. */
import type { WebGLRenderer } from "pixi.js";
import { type BarrelLayer, createBarrelLayer, drawCeiling, drawSky, groundColour } from "./barrelLayer.ts";
import type { DrawBodies } from "./bodyLayer.ts";
import { createDiscGeometry } from "./disc.ts";
import { createFrame, type Frame, fillFrame } from "./frame.ts";
import { createGroundLayer, drawGround, type GroundLayer } from "./groundLayer.ts";
import { createLineLayer, drawMarks, type LineLayer } from "./lineLayer.ts";
import { createMilkyWayLayer, drawMilkyWay, type MilkyWayLayer } from "./milkyWay.ts";
import { createLayerOf, createObjectLayer, drawObjects, type ObjectLayer } from "./objectLayer.ts";
import { createOpenSkyLayer, drawMask, drawOpenSky, type OpenSkyLayer } from "./openSky.ts";
import { heightPxOf, isFieldAlone, widthPxOf } from "./reach.ts";
import { createRenderer, isSoftware } from "./renderer.ts";
import { createRimLayer, drawRim, type RimLayer } from "./rimLayer.ts";
import { createRingGeometry, FINE, NET } from "./rings.ts";
import type { DrawSpikes } from "./spikes.ts";
import { createStarLayer, drawStars, moreLight, type StarLayer } from "./starLayer.ts";
import type { FieldView, StageLayout } from "./view.ts";

export interface StageEvents {
  /** The graphics processor has gone; nothing is drawn until it is back. */
  readonly onContextLost?: () => void;
  /** It is back, and the last view is drawn again. */
  readonly onContextRestored?: () => void;
}
/** A picture read back: rows from the lowest upwards, red, green, blue, alpha. */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8Array;
}
export interface Stage {
  /** The processor draws: each frame costs the whole machine something. */
  readonly bySoftware: boolean;
  /** Draws a view, once. The view may be the same object each time, written anew. Does nothing while the context is lost. */
  draw(view: FieldView): void;
  /**
   * Sizes the canvas and lays it about the field's centre; to be called again when the window or its `devicePixelRatio`
   * changes. Draws the last view again.
   */
  resize(layout: StageLayout): void;
  /** Draws the last view and reads the whole picture back in the same task. Slow: for tests and stills. */
  readPixels(): Pixels;
  destroy(): void;
}
interface Layers {
  readonly barrel: BarrelLayer;
  readonly rim: RimLayer;
  readonly openSky: OpenSkyLayer;
  readonly milkyWay: MilkyWayLayer;
  readonly ground: GroundLayer;
  readonly stars: StarLayer;
  readonly objects: ObjectLayer;
  readonly marks: LineLayer;
  /** Each null until its code is there. */
  spikes: DrawSpikes | null;
  bodies: DrawBodies | null;
}

const COLOUR_BUFFER = 0x4000;

const createLayers = (frame: Frame): Layers => {
  const rings = createRingGeometry(FINE);
  const openSky = createOpenSkyLayer(frame, createRingGeometry(NET), rings);
  return {
    barrel: createBarrelLayer(frame, createDiscGeometry()),
    rim: createRimLayer(frame),
    openSky,
    milkyWay: createMilkyWayLayer(frame),
    ground: createGroundLayer(frame, openSky),
    stars: createStarLayer(frame),
    objects: createObjectLayer(frame),
    marks: createLineLayer(frame, rings),
    spikes: null,
    bodies: null,
  };
};

/** Brings the code of what few fields have, when a view first asks for it. */
const bringLate = (layers: Layers, frame: Frame): ((view: FieldView, redraw: () => void) => void) => {
  const asked = { spikes: false, bodies: false };
  const ask = (what: keyof typeof asked, bring: () => Promise<void>, redraw: () => void) => {
    if (asked[what]) return;
    asked[what] = true;
    // Where the file does not come, the field goes without.
    void bring().then(redraw, () => undefined);
  };
  const bringSpikes = async () => {
    const { createSpikes } = await import("./spikes.ts");
    layers.spikes = createSpikes(frame, (...of) => moreLight(layers.stars, frame, ...of));
  };
  const bringBodies = async () => {
    const { createBodies } = await import("./bodyLayer.ts");
    layers.bodies = createBodies((look) => createLayerOf(frame, look), drawObjects);
  };
  return (view, redraw) => {
    if (view.spikes) ask("spikes", bringSpikes, redraw);
    if (view.bodies?.length) ask("bodies", bringBodies, redraw);
  };
};

const drawLayers = (gpu: WebGLRenderer, layers: Layers, frame: Frame, view: FieldView, layout: StageLayout): void => {
  if (view.horizon) {
    drawOpenSky(gpu, layers.openSky, frame, view, view.horizon);
    drawMilkyWay(gpu, layers.milkyWay, view, view.horizon);
  } else drawSky(gpu, layers.barrel, frame, view);
  drawObjects(gpu, layers.objects, view.objects, view.objectsVersion);
  drawStars(gpu, layers.stars, frame, view);
  if (view.spikes) layers.spikes?.(gpu, view, view.spikes);
  if (view.bodies) layers.bodies?.(gpu, view.bodies);
  if (view.horizon) drawGround(gpu, layers.ground, layers.openSky, frame, view);
  drawMarks(gpu, layers.marks, frame, view, layout);
  if (view.horizon) drawMask(gpu, layers.openSky, frame, view);
  drawCeiling(gpu, layers.barrel, frame, view);
  drawRim(gpu, layers.rim, frame, view, layout);
};

/**
 * Makes a stage on a canvas that has no context yet.
 * @throws NoPictureError where the browser has no WebGL 2
 */
export const createStage = async (canvas: HTMLCanvasElement, events: StageEvents = {}): Promise<Stage> => {
  const renderer = await createRenderer(canvas);
  const frame = createFrame();
  const layers = createLayers(frame);
  let layout: StageLayout | null = null;
  let lastView: FieldView | null = null;
  const bring = bringLate(layers, frame);
  const redraw = () => lastView && draw(lastView);
  const clearColor: [number, number, number, number] = [0, 0, 0, 1];
  const bound = { target: renderer.view.renderTarget, clear: COLOUR_BUFFER, clearColor };

  const draw = (view: FieldView): void => {
    lastView = view;
    if (!layout || renderer.context.isLost) return;
    fillFrame(frame, view, layout);
    groundColour(frame, view, clearColor);
    renderer.renderTarget.bind(bound);
    drawLayers(renderer, layers, frame, view, layout);
    bring(view, redraw);
  };
  const onLost = (event: Event): void => {
    event.preventDefault();
    events.onContextLost?.();
  };
  // Pixi's own handler, added before this one, has by now made programs, buffers and textures ready to be handed over anew.
  const onRestored = (): void => {
    redraw();
    events.onContextRestored?.();
  };
  canvas.addEventListener("webglcontextlost", onLost);
  canvas.addEventListener("webglcontextrestored", onRestored);

  return {
    bySoftware: isSoftware(renderer.gl),
    draw,
    resize(next) {
      layout = next;
      const { left, right, up, down } = next.reachCssPx;
      renderer.resize(widthPxOf(next), heightPxOf(next), 1);
      canvas.style.width = `${left + right}px`;
      canvas.style.height = `${up + down}px`;
      canvas.style.left = `${-left}px`;
      canvas.style.top = `${-up}px`;
      canvas.style.borderRadius = isFieldAlone(next) ? "50%" : "0";
      redraw();
    },
    readPixels() {
      redraw();
      const { gl } = renderer;
      const { width, height } = canvas;
      const rgba = new Uint8Array(width * height * 4);
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, rgba);
      return { width, height, rgba };
    },
    destroy() {
      canvas.removeEventListener("webglcontextlost", onLost);
      canvas.removeEventListener("webglcontextrestored", onRestored);
      lastView = null;
      renderer.destroy();
    },
  };
};
