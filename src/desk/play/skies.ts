/** Opens the skies of lessons, and asks the sky worker what the page does not work out itself. */
import type { Site } from "#core/celestial/frames.ts";
import type { Lesson } from "#core/lesson/types.ts";
import type { Call, SkyRef } from "#core/seams/index.ts";
import { createCatalogueSource, type DecodeFile } from "#core/sky/catalogue/catalogueSource.ts";
import type { GlowCells } from "#core/sky/glow/glowCells.ts";
import { glowOfSky } from "#core/sky/glow/glowOfSky.ts";
import { catalogueNames } from "#core/sky/names/catalogueNames.ts";
import type { MovingBody } from "#core/sky/names/findByName.ts";
import { catalogueObjects } from "#core/sky/objects.ts";
import type { MakeTile } from "#core/sky/practice/practiceSource.ts";
import type { SolarSystem } from "#core/sky/solar/solarSystem.ts";
import { createSkyCall, type WorkerCall } from "../workers/createCalls.ts";
import type { OpenSky } from "./openSky.ts";

export type { OpenSky } from "./openSky.ts";

const fetchFile = async (name: string, signal: AbortSignal): Promise<ArrayBuffer> => {
  const response = await fetch(new URL(`sky/${name}`, document.baseURI), { signal });
  if (!response.ok) throw new Error(`the server answered ${response.status}`);
  return response.arrayBuffer();
};

let skyWorker: WorkerCall | null = null;
/** Asks the sky worker, which is started by the first question. */
const askSky: Call = (method, input, how) => {
  skyWorker ??= createSkyCall();
  return skyWorker.call(method, input, how);
};

/** Star tiles are decoded beside the page: the largest would hold the field up for several frames. */
export const decodeTile: DecodeFile = (bytes, name, { signal, priority }) => {
  return askSky("decodeTileFile", { bytes, name }, { signal, priority, transfer: [bytes.buffer] });
};

let catalogue: OpenSky | null = null;

/** The catalogue sky is one for the whole page: what was loaded for one lesson is there for the next. */
function openCatalogue(): OpenSky {
  if (catalogue) return catalogue;
  const source = createCatalogueSource({ fetchFile, decode: decodeTile });
  catalogue = {
    source,
    names: catalogueNames(),
    objects: catalogueObjects(),
    places: [],
    bordersWithin: (cone) =>
      import("#core/sky/boundaries/borderLines.ts").then(
        ({ bordersWithin }) => bordersWithin(cone),
        () => [],
      ),
    glow: () => glowOfSky({ kind: "catalogue" }).catch(() => undefined),
    failures: () => source.failures().map(({ message }) => message),
    retry: () => source.retryFailed(),
  };
  return catalogue;
}

/** Tiles of practice skies are made beside the page, so that the field never waits for them. */
const makeTile: MakeTile = (seed, key, signal) => {
  return askSky("generateTile", { seed, key }, { signal });
};

/** Where Sun, Moon and planets stand at an instant, from beside the page. */
export function bodiesAt(utcMs: number): Promise<readonly MovingBody[]> {
  return askSky("movingBodies", { utcMs });
}

/** Sun, Moon and planets as they are seen from a place at an instant, from beside the page. */
export function solarSystemAt(site: Site, utcMs: number): Promise<SolarSystem> {
  return askSky("solarSystem", { site, utcMs });
}

/** The Milky Way over a night, from beside the page. */
export const milkyWayOver = ({ kind, seed }: SkyRef, nightMu: number): Promise<GlowCells> =>
  askSky("milkyWay", { sky: { kind, seed }, nightMu });

let practice: typeof import("./practiceSkies.ts") | null = null;
let wanderers: typeof import("#core/lesson/bodies.ts") | null = null;

/** Brings what is needed before a practice sky can be opened; every screen that may show one waits for it. */
export async function practiceReady(): Promise<void> {
  practice ??= await import("./practiceSkies.ts");
}

/** Brings what places the comets and minor planets of lessons; a screen that may show such a lesson waits for it. */
export async function bodiesReady(): Promise<void> {
  wanderers ??= await import("#core/lesson/bodies.ts");
}

/** Opens the sky that a lesson names, without the lesson's own bodies. @throws Error where it is a practice sky and `practiceReady` was not awaited */
export function openSky(sky: Lesson["sky"]): OpenSky {
  if (sky === "catalogue") return openCatalogue();
  if (!practice) throw new Error("a practice sky was opened before its code had come");
  return practice.openPracticeSky(sky.practice, makeTile);
}

/**
 * Opens the sky of a lesson with the bodies that it brings along.
 * @param among instead of the sky that the lesson names
 * @throws Error where there are such bodies and `bodiesReady` was not awaited, or as `openSky`
 */
export function openSkyOf(lesson: Lesson, among: OpenSky = openSky(lesson.sky)): OpenSky {
  if (lesson.bodies.length === 0) return among;
  if (!wanderers) throw new Error("a lesson with bodies of its own was opened before their code had come");
  return { ...among, objects: [...among.objects, ...wanderers.bodiesOf(lesson)] };
}
