/** Pixi's WebGL renderer without scene, ticker or collector: the stage draws its own meshes through the encoder. */
import "pixi.js/unsafe-eval";
import { type Geometry, type Shader, State, Ticker, type Topology, WebGLRenderer } from "pixi.js";
import { AppError } from "#core/seams/errors.ts";

/** The browser gives no WebGL 2: nothing can be drawn, and no weaker way is tried. */
export class NoPictureError extends AppError {
  override readonly name = "NoPictureError";
  readonly code = "NO_PICTURE";
}
/** One call of the encoder; made once, its counts changed from frame to frame. */
export interface DrawCall {
  geometry: Geometry;
  shader: Shader;
  state: State;
  topology: Topology;
  size: number;
  start: number;
  instanceCount: number;
}
export type BlendKind = "opaque" | "over" | "add" | "screen" | "min";
const MODE_OF = { opaque: "none", over: "normal", add: "add", screen: "screen", min: "min" } as const;

export const stateFor = (kind: BlendKind): State => {
  const state = State.for2d();
  state.blendMode = MODE_OF[kind];
  state.blend = kind !== "opaque";
  return state;
};

export const drawCall = (geometry: Geometry, shader: Shader, kind: BlendKind, topology: Topology): DrawCall => ({
  geometry,
  shader,
  state: stateFor(kind),
  topology,
  size: 0,
  start: 0,
  instanceCount: 1,
});

/** An empty call is left out: to pixi a size of 0 means everything. */
export const issue = (renderer: WebGLRenderer, call: DrawCall): void => {
  if (call.size > 0 && call.instanceCount > 0) renderer.encoder.draw(call);
};

/**
 * @param canvas - its pixels are set by `renderer.resize`
 * @throws NoPictureError where the browser has no WebGL 2
 */
export const createRenderer = async (canvas: HTMLCanvasElement): Promise<WebGLRenderer> => {
  const gl = canvas.getContext("webgl2", {
    alpha: false,
    antialias: false,
    depth: false,
    stencil: true,
    preserveDrawingBuffer: false,
    powerPreference: "default",
  });
  if (!gl) {
    throw new NoPictureError(
      "This browser gives no WebGL 2, so the field cannot be drawn.",
      "Switch on hardware acceleration or WebGL in the browser's settings, or try another browser.",
    );
  }
  const renderer = new WebGLRenderer();
  await renderer.init({
    canvas,
    context: gl,
    width: canvas.width,
    height: canvas.height,
    resolution: 1,
    antialias: false,
    backgroundAlpha: 1,
    gcActive: false,
    hello: false,
    skipExtensionImports: true,
  });
  // The renderer's scheduler has nothing to do here; without this it would keep a frame callback alive for ever.
  Ticker.system.autoStart = false;
  Ticker.system.stop();
  return renderer;
};

/** Drivers that draw on the processor, by the names that they give themselves. */
const SOFTWARE = /swiftshader|llvmpipe|software|basic render/i;

/** Whether there is no graphics processor behind a context. */
export const isSoftware = (gl: WebGL2RenderingContext): boolean => {
  const told = gl.getExtension("WEBGL_debug_renderer_info");
  return SOFTWARE.test(String(gl.getParameter(told ? told.UNMASKED_RENDERER_WEBGL : gl.RENDERER)));
};
