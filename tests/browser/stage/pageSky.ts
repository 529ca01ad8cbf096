/** The catalogue's own files, from beside the page, and how long frames take. */
import { createCatalogueSource } from "#core/sky/catalogue/catalogueSource.ts";

export const pageSky = () =>
  createCatalogueSource({
    fetchFile: async (name) => {
      const answer = await fetch(`sky/${name}`);
      if (!answer.ok) throw new Error(`no ${name}`);
      return answer.arrayBuffer();
    },
  });

export interface Timing {
  readonly medianMs: number;
  readonly p99Ms: number;
}
/** Times so many frames, each until one pixel of it is read back; now and then the page has its turn. */
export async function timeFrames(
  gl: WebGL2RenderingContext,
  frames: number,
  frame: (i: number) => void,
): Promise<Timing> {
  const pixel = new Uint8Array(4);
  const times = new Float64Array(frames);
  for (let i = 0; i < frames; i++) {
    const started = performance.now();
    frame(i);
    gl.readPixels(i % 400, 200, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    times[i] = performance.now() - started;
    if (i % 10 === 9) await new Promise((resolve) => setTimeout(resolve, 0));
  }
  times.sort();
  return { medianMs: times[frames >> 1]!, p99Ms: times[Math.floor(frames * 0.99)]! };
}
