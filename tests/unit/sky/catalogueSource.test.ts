import { expect, test } from "vitest";
import { crc32 } from "#core/celestial/hash.ts";
import { dirFromRadec } from "#core/celestial/vector.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { Cone, Dir } from "#core/seams/index.ts";
import { createStarStore } from "#core/sky/build/starStore.ts";
import { tileFiles } from "#core/sky/build/tiles.ts";
import { createCatalogueSource, type DecodeFile } from "#core/sky/catalogue/catalogueSource.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { tilesOfCone } from "#core/sky/catalogue/tilesOfCone.ts";

/** 6000 stars over the whole sky, a third in each layer. */
const FILES = new Map(
  (() => {
    const store = createStarStore();
    for (let i = 0; i < 6000; i++) {
      const dir = dirFromRadec((i * 2.399963) % 6.2831, Math.asin((i + 0.5) / 3000 - 1));
      store.add(dir, [500, 800, 1100][i % 3]! + (i % 100), 0.5);
    }
    return tileFiles(store.columns()).map((file) => [file.name, file.bytes] as const);
  })(),
);

/** A fetch that waits until the test lets it go. */
function heldFetch() {
  const asked: string[] = [];
  const open = new Map<string, { answer: (bytes?: Uint8Array<ArrayBuffer>) => void; signal: AbortSignal }>();
  let most = 0;
  const fetchFile = (name: string, signal: AbortSignal) =>
    new Promise<ArrayBuffer>((resolve, reject) => {
      asked.push(name);
      const leave = () => open.delete(name);
      signal.addEventListener("abort", () => {
        leave();
        reject(signal.reason);
      });
      open.set(name, {
        signal,
        answer: (bytes) => {
          leave();
          if (bytes) resolve(bytes.slice().buffer);
          else reject(new Error("404 Not Found"));
        },
      });
      most = Math.max(most, open.size);
    });
  const answerAll = async () => {
    while (open.size > 0) {
      for (const [name, request] of [...open]) request.answer(FILES.get(name));
      await settled();
    }
  };
  return { asked, open, fetchFile, answerAll, mostOpen: () => most };
}

const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
const never = new AbortController().signal;
const prompt = async (name: string) => FILES.get(name)!.slice().buffer;
const cone = (ra: number, dec: number, radiusRad = 0.1): Cone => ({ centre: dirFromRadec(ra, dec), radiusRad });
const WHOLE: Cone = { centre: [0, 0, 1] as Dir, radiusRad: Math.PI };

test("what is not here is missing; what is wanted comes, and the answer is complete", async () => {
  const source = createCatalogueSource({ fetchFile: prompt });
  const here = cone(1, 0.5);
  const before = source.resident(here, 12);
  expect(before).toMatchObject({ complete: false, blocks: [] });
  expect(before.missing).toEqual(tilesOfCone(here, 12));
  await source.want(before.missing, 0, never);
  const after = source.resident(here, 12);
  expect(after).toMatchObject({ complete: true, missing: [] });
  expect(after.blocks.length).toBeGreaterThan(3);
  expect(new Set(after.blocks.map((block) => block.key.layer))).toEqual(new Set([0, 1, 2]));
  expect(source.ref).toEqual({ kind: "catalogue", skyVersion: 1 });
});

test("the whole sky holds every star once", async () => {
  const source = createCatalogueSource({ fetchFile: prompt });
  await source.want(source.resident(WHOLE, 12.5).missing, 0, never);
  const { blocks } = source.resident(WHOLE, 12.5);
  expect(blocks.reduce((sum, block) => sum + block.count, 0)).toBe(6000);
});

test("the version changes only when the lists do, and callers in turn keep their own answers", async () => {
  const source = createCatalogueSource({ fetchFile: prompt });
  const left = cone(1, 0.5);
  const right = cone(4, -0.5);
  const empty = source.resident(left, 9);
  expect(source.resident(left, 9)).toBe(empty);
  await source.want(empty.missing, 0, never);
  const a = source.resident(left, 9);
  const b = source.resident(right, 9);
  expect(new Set([empty.version, a.version, b.version]).size).toBe(3);
  for (let i = 0; i < 5; i++) {
    expect(source.resident(left, 9)).toBe(a);
    expect(source.resident(right, 9)).toBe(b);
  }
  // A hair's move within the same tiles changes nothing; a file for the other place leaves this answer alone.
  expect(source.resident(cone(1.00001, 0.5), 9)).toBe(a);
  await source.want(b.missing, 0, never);
  expect(source.resident(left, 9)).toBe(a);
  expect(source.resident(right, 9).version).not.toBe(b.version);
});

test("at most four files are under way, each fetched once however many ask, the most urgent first", async () => {
  const { asked, open, fetchFile, answerAll, mostOpen } = heldFetch();
  const source = createCatalogueSource({ fetchFile });
  const all = tilesOfCone(WHOLE, 12.5);
  const everything = source.want(all, 5, never);
  const again = source.want(all, 5, never);
  expect(open.size).toBe(4);
  const urgent = source.want(
    all.filter((key) => key.layer === 2 && key.pixel >= 47 * 64),
    0,
    never,
  );
  open.get("stars-0.bin")!.answer(FILES.get("stars-0.bin"));
  await settled();
  expect(asked[4]).toBe("stars-2-47.bin");
  await answerAll();
  await Promise.all([everything, again, urgent]);
  expect(mostOpen()).toBe(4);
  expect([...asked].sort()).toEqual([...FILES.keys()].sort());
});

test("a file that nobody waits for any more is given up; one that another still waits for is not", async () => {
  const { asked, open, fetchFile, answerAll } = heldFetch();
  const source = createCatalogueSource({ fetchFile });
  const [first, second] = [new AbortController(), new AbortController()];
  const tiles = tilesOfCone(WHOLE, 9.5);
  const reason = new Error("out of view");
  const one = source.want(tiles, 1, first.signal);
  const two = source.want(
    tiles.filter((key) => key.layer === 0),
    1,
    second.signal,
  );
  first.abort(reason);
  await expect(one).rejects.toBe(reason);
  await settled();
  expect([...open.keys()]).toEqual(["stars-0.bin"]);
  expect(asked).toHaveLength(4);
  await answerAll();
  await two;
  expect(source.resident(WHOLE, 6.5).complete).toBe(true);
  // Wanted anew, the files given up come after all.
  const anew = source.want(tiles, 1, never);
  await answerAll();
  await anew;
  expect(source.resident(WHOLE, 9.5).complete).toBe(true);
  await expect(source.want(tilesOfCone(WHOLE, 12), 1, AbortSignal.abort(reason))).rejects.toBe(reason);
});

test("a missing and a damaged file fail by name, are not asked for again, and leave the rest working", async () => {
  const asked: string[] = [];
  let broken = true;
  const fetchFile = async (name: string) => {
    asked.push(name);
    if (broken && name === "stars-1-03.bin") throw new Error("404 Not Found");
    const bytes = FILES.get(name)!.slice();
    if (broken && name === "stars-1-05.bin") bytes[100] = bytes[100]! ^ 1;
    return bytes.buffer;
  };
  const source = createCatalogueSource({ fetchFile });
  const tiles = tilesOfCone(WHOLE, 9.5);
  await expect(source.want(tiles, 0, never)).rejects.toBeInstanceOf(DataFileError);
  expect(
    source
      .failures()
      .map((error) => error.message.slice(0, 24))
      .sort(),
  ).toEqual(["stars-1-03.bin could not", "stars-1-05.bin is not a "]);
  const { missing, blocks } = source.resident(WHOLE, 9.5);
  expect(new Set(missing.map((key) => key.pixel >> 6))).toEqual(new Set([3, 5]));
  expect(blocks.reduce((sum, block) => sum + block.count, 0)).toBeGreaterThan(3500);
  const before = asked.length;
  await expect(source.want(missing, 0, never)).rejects.toThrow(/stars-1-0[35]\.bin/);
  expect(asked).toHaveLength(before);
  broken = false;
  source.retryFailed();
  await source.want(missing, 0, never);
  expect(source.resident(WHOLE, 9.5).complete).toBe(true);
  expect(source.failures()).toEqual([]);
});

test("a file under another's name is refused", async () => {
  const fetchFile = async (name: string) =>
    FILES.get(name === "stars-1-02.bin" ? "stars-1-04.bin" : name)!.slice().buffer;
  const source = createCatalogueSource({ fetchFile });
  await expect(source.want(tilesOfCone(WHOLE, 9.5), 0, never)).rejects.toThrow(
    "stars-1-02.bin holds tiles of another file",
  );
});

test("above the cap the files longest unused go, the bright layer never", async () => {
  // Room for the 2000 stars of the bright layer and about a third of the next.
  const source = createCatalogueSource({ fetchFile: prompt, capBytes: 18 * 2700 });
  const places = [cone(0.5, 0.9, 0.01), cone(2, 0.9, 0.01), cone(3.5, 0.9, 0.01), cone(5, 0.9, 0.01)];
  places.push(...[0.1, 1.6, 3.2, 4.7].map((ra) => cone(ra, 0, 0.01)));
  for (const place of places) {
    source.resident(places[0]!, 9);
    await source.want(tilesOfCone(place, 9), 0, never);
  }
  expect(source.resident(WHOLE, 6.5).complete).toBe(true);
  expect(places.map((place) => source.resident(place, 9).complete)).toEqual([
    true,
    false,
    false,
    false,
    false,
    true,
    true,
    true,
  ]);
  await source.want(tilesOfCone(places[1]!, 9), 0, never);
  expect(source.resident(places[1]!, 9).complete).toBe(true);
});

/** Everything in a source's blocks, as one number. */
function hashOf(source: ReturnType<typeof createCatalogueSource>): number {
  const parts = source
    .resident(WHOLE, 12.5)
    .blocks.flatMap(({ key, dirs, milliMag, colourBV }) => [
      new TextEncoder().encode(JSON.stringify(key)),
      ...[dirs, milliMag, colourBV].map((part) => new Uint8Array(part.slice().buffer)),
    ]);
  return crc32(Uint8Array.from(parts.flatMap((part) => [...part])));
}

test("decoded elsewhere the sky is the same to the last bit; the bright layer never waits for that", async () => {
  const elsewhere: string[] = [];
  const decode: DecodeFile = async (bytes, name) => {
    elsewhere.push(name);
    await settled();
    return decodeTileFile(bytes, name);
  };
  const [here, there] = [
    createCatalogueSource({ fetchFile: prompt }),
    createCatalogueSource({ fetchFile: prompt, decode }),
  ];
  for (const source of [here, there]) await source.want(tilesOfCone(WHOLE, 12.5), 0, never);
  expect(hashOf(there)).toBe(hashOf(here));
  expect(elsewhere.sort()).toEqual([...FILES.keys()].filter((name) => name !== "stars-0.bin").sort());
});

test("a file given up while it is decoded leaves nothing behind, not even a failure, and comes when wanted anew", async () => {
  const started: { name: string; priority: number }[] = [];
  let most = 0;
  let underWay = 0;
  let gives = false;
  const decode: DecodeFile = (bytes, name, { signal, priority }) => {
    started.push({ name, priority });
    most = Math.max(most, ++underWay);
    return new Promise((resolve, reject) => {
      const leave = () => {
        underWay -= 1;
        reject(new DOMException("The call was cancelled.", "AbortError"));
      };
      if (!gives) return signal.addEventListener("abort", leave);
      underWay -= 1;
      resolve(decodeTileFile(bytes, name));
    });
  };
  const source = createCatalogueSource({ fetchFile: prompt, decode });
  const abort = new AbortController();
  const tiles = tilesOfCone(WHOLE, 9.5).filter((key) => key.layer === 1);
  const wish = source.want(tiles, 3, abort.signal);
  await settled();
  expect([started.length, most, started[0]!.priority]).toEqual([4, 4, 3]);
  abort.abort();
  await expect(wish).rejects.toMatchObject({ name: "AbortError" });
  await settled();
  expect([underWay, source.failures()]).toEqual([0, []]);
  expect(source.resident(WHOLE, 9.5).blocks).toEqual([]);
  gives = true;
  await source.want(tiles, 0, never);
  expect(source.resident(WHOLE, 9.5).missing.every((key) => key.layer === 0)).toBe(true);
});

test("a decoder that gives up of its own accord is no failure of the file; one that breaks is", async () => {
  let error: Error = new DOMException("The call was cancelled.", "AbortError");
  const decode: DecodeFile = () => Promise.reject(error);
  const source = createCatalogueSource({ fetchFile: prompt, decode });
  const tiles = tilesOfCone(cone(1, 0.5), 9.5).filter((key) => key.layer === 1);
  await expect(source.want(tiles, 0, never)).rejects.toBe(error);
  expect(source.failures()).toEqual([]);
  error = new Error("The worker stopped");
  await expect(source.want(tiles, 0, never)).rejects.toBeInstanceOf(DataFileError);
  expect(source.failures()).not.toEqual([]);
});
