/** The stage alone on a page, with handles for the specs: views come in as plain values, pictures go out as text. */
import { createStage, type FieldAir, type FieldView, type Stage, type StageLayout } from "../../../src/stage/index.ts";
import { runBench } from "./bench.ts";
import { createEffects, type Effects, type EffectsOptions, type EffectsScene } from "./effects.ts";
import { blockOf, LAYOUT, PLAIN_VIEW, type TestStar } from "./scene.ts";

export type SceneSpec = Partial<Omit<FieldView, "blocks">> & { readonly stars?: readonly TestStar[] };

type Place = readonly [x: number, y: number];

const canvas = document.querySelector("canvas")!;
const events: string[] = [];
const violations: string[] = [];
let stage: Stage;
let effects: Effects;
let version = 0;

const viewOf = (spec: SceneSpec): FieldView => {
  const { stars = [], ...rest } = spec;
  version += 1;
  return { ...PLAIN_VIEW, blocks: [blockOf(stars)], objectsVersion: version, ...rest };
};
/** Packed first: a picture is mostly dark, and the way out of the page is slow. */
async function toText(bytes: Uint8Array): Promise<string> {
  const packed = new Blob([Uint8Array.from(bytes)]).stream().pipeThrough(new CompressionStream("deflate"));
  const short = new Uint8Array(await new Response(packed).arrayBuffer());
  let text = "";
  for (let i = 0; i < short.length; i += 8192) text += String.fromCharCode(...short.subarray(i, i + 8192));
  return btoa(text);
}
const nextEvent = (type: string) =>
  new Promise<void>((resolve) => canvas.addEventListener(type, () => setTimeout(resolve, 0), { once: true }));

const handles = {
  events,
  violations,
  async start(layout: StageLayout = LAYOUT) {
    stage = await createStage(canvas, {
      onContextLost: () => events.push("lost"),
      onContextRestored: () => events.push("restored"),
    });
    stage.resize(layout);
  },
  resize: (layout: StageLayout) => stage.resize(layout),
  draw: (spec: SceneSpec) => stage.draw(viewOf(spec)),
  /** A view, then the same with a change: what the stage keeps from frame to frame is kept. */
  drawThen(spec: SceneSpec, change: Partial<FieldView>) {
    const view = viewOf(spec);
    stage.draw(view);
    stage.draw({ ...view, ...change });
  },
  /** The last view, base64 of its packed rows from the lowest upwards. */
  async pixels() {
    const { width, height, rgba } = stage.readPixels();
    return { width, height, rgba: await toText(rgba) };
  },
  /**
   * Takes the context away and gives it back, as a driver does; resolves when the stage has drawn again.
   * @param meanwhile - a view asked for while there is no context
   */
  async loseAndRestore(meanwhile?: SceneSpec) {
    const extension = canvas.getContext("webgl2")!.getExtension("WEBGL_lose_context")!;
    const lost = nextEvent("webglcontextlost");
    extension.loseContext();
    await lost;
    if (meanwhile) stage.draw(viewOf(meanwhile));
    const restored = nextEvent("webglcontextrestored");
    extension.restoreContext();
    await restored;
  },
  /** Draws a view so many times, turned a little about its axis each time, in place. */
  spin(spec: SceneSpec, frames: number) {
    const view = viewOf(spec);
    const matrix = Float64Array.from(view.viewFromIcrs);
    const turned = { ...view, viewFromIcrs: matrix };
    const [cos, sin] = [Math.cos(0.002), Math.sin(0.002)];
    for (let i = 0; i < frames; i++) {
      for (let c = 0; c < 3; c++) {
        const right = matrix[c]!;
        matrix[c] = cos * right + sin * matrix[c + 3]!;
        matrix[c + 3] = cos * matrix[c + 3]! - sin * right;
      }
      stage.draw(turned);
    }
  },
  /** Green over the empty field about places of the window, summed over squares of `reach` px to each side; a row for each second. */
  lights(
    spec: SceneSpec,
    air: Omit<FieldAir, "seconds">,
    seconds: readonly number[],
    places: readonly Place[],
    reach: number,
  ) {
    const view = viewOf(spec);
    const sum = (shown: FieldView) => {
      stage.draw(shown);
      const { width, rgba } = stage.readPixels();
      return places.map(([x, y]) => {
        let light = 0;
        for (let row = Math.round(y) - reach; row <= y + reach; row++)
          for (let column = Math.round(x) - reach; column <= x + reach; column++)
            light += rgba[(row * width + column) * 4 + 1]!;
        return light;
      });
    };
    const empty = sum({ ...view, blocks: [] });
    return seconds.map((at) => sum({ ...view, air: { ...air, seconds: at } }).map((light, i) => light - empty[i]!));
  },
  /** Makes a scene with all effects; gives how many stars it draws. */
  async prepare(scene: EffectsScene, fieldPx: number) {
    effects = await createEffects(stage, fieldPx, scene);
    return effects.stars;
  },
  time: (options: EffectsOptions) => effects.time(options),
  /** Draws so many frames of it. */
  run(frames: number) {
    for (let i = 0; i < frames; i++) effects.frame(i);
  },
  bench: (options: Parameters<typeof runBench>[1]) => runBench(stage, options),
};
export type StagePage = typeof handles;
document.addEventListener("securitypolicyviolation", (event) => violations.push(event.violatedDirective));
Object.assign(window, { stagePage: handles });
