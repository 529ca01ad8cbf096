/** The catalogue sky as a source of stars: files come in when wanted, old ones go when there are too many. */
import { pixelsInCone } from "#core/celestial/healpix.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { StarBlock, StarSource, TileKey } from "#core/seams/index.ts";
import { decodeTileFile, type TileFile } from "./decodeTileFile.ts";
import { type AcceptFile, createFileLoader, type FetchFile, type OnTheWay } from "./fileLoader.ts";
import { fileCount, fileIndex, fileName, homeOf, LAYERS, type Layer } from "./layers.ts";
import { createRefilled, createResidents } from "./residents.ts";
import { layerReaches, tileKey } from "./tilesOfCone.ts";

export const CATALOGUE_SKY_VERSION = 1;
const FILES_AT_ONCE = 4;
const DECODED_CAP_BYTES = 64 * 1024 * 1024;
/** Three floats a direction, one a colour, 16 bits a magnitude. */
const DECODED_STAR_BYTES = 18;

/** Decodes a file elsewhere; the bytes are the decoder's from then on. Rejects as `decodeTileFile` throws. */
export type DecodeFile = (bytes: Uint8Array<ArrayBuffer>, name: string, onTheWay: OnTheWay) => Promise<TileFile>;
export type CatalogueOptions = {
  readonly fetchFile: FetchFile;
  /** For every file but the bright layer's, which is small and wanted before a worker could have started. Default: here. */
  readonly decode?: DecodeFile;
  readonly capBytes?: number;
};
export type CatalogueSource = StarSource & {
  /** What failed so far, each error naming its file. Such a file is not asked for again before `retryFailed`. */
  readonly failures: () => readonly DataFileError[];
  readonly retryFailed: () => void;
};

/** One file: its blocks by the pixel of the layer's own order (several where a tile was split), undefined until it is here. */
type SkyFile = {
  readonly layer: Layer;
  readonly name: string;
  blocks: ReadonlyMap<number, readonly StarBlock[]> | undefined;
  bytes: number;
  lastUse: number;
};

/**
 * `fetchFile` gets a file of `assets/sky` by its name; it should reject where there is none. `want` loads at most four files
 * at once, smaller priority numbers first (0: in view now), and gives up a file when every caller that waits for it has
 * aborted. Decoded stars stay under `capBytes` (the file just loaded and the bright layer aside): the files that were not
 * asked about for longest go first. `resident` hands out the same object as long as its lists are the same.
 */
export function createCatalogueSource(options: CatalogueOptions): CatalogueSource {
  const { fetchFile, decode, capBytes = DECODED_CAP_BYTES } = options;
  const files = LAYERS.map((layer) => Array.from({ length: fileCount(layer) }, (_, i) => emptyFile(layer, i)));
  const byName = new Map(files.flat().map((file) => [file.name, file]));
  const residents = createResidents();
  const pixels: number[] = [];
  const blocks = createRefilled<StarBlock>();
  const missing = createRefilled<TileKey>();
  let uses = 0;

  const accept: AcceptFile = async (name, buffer, onTheWay) => {
    const file = byName.get(name)!;
    const bytes = new Uint8Array(buffer);
    const elsewhere = file.layer.layer > 0 && decode;
    const decoded = elsewhere ? await elsewhere(bytes, name, onTheWay) : decodeTileFile(bytes, name);
    if (onTheWay.signal.aborted) return;
    fill(file, decoded);
    file.lastUse = ++uses;
    residents.drop(makeRoom(byName.values(), file, capBytes));
  };
  const loader = createFileLoader(fetchFile, accept, FILES_AT_ONCE);
  const gather = (layer: Layer) => {
    for (const pixel of pixels) {
      const file = files[layer.layer]![fileIndex(layer, pixel)]!;
      file.lastUse = uses;
      if (!file.blocks) missing.add(tileKey(layer, pixel));
      else for (const block of file.blocks.get(pixel) ?? NO_BLOCKS) blocks.add(block);
    }
  };

  return {
    ref: { kind: "catalogue", skyVersion: CATALOGUE_SKY_VERSION },
    resident(cone, limitMag) {
      uses += 1;
      blocks.begin();
      missing.begin();
      for (const layer of LAYERS) {
        if (!layerReaches(layer, limitMag)) continue;
        pixelsInCone(layer.order, cone.centre, cone.radiusRad, pixels);
        gather(layer);
      }
      return residents.answerFor(blocks.end(), missing.end());
    },
    async want(tiles, priority, signal) {
      const lacking = new Set<string>();
      for (const key of tiles) {
        const { layer, pixel } = homeOf(key);
        const file = files[layer.layer]![fileIndex(layer, pixel)]!;
        if (!file.blocks) lacking.add(file.name);
      }
      return loader.load(lacking, priority, signal);
    },
    failures: loader.failures,
    retryFailed: loader.forgetFailures,
  };
}

const NO_BLOCKS: readonly StarBlock[] = [];

function emptyFile(layer: Layer, index: number): SkyFile {
  return { layer, name: fileName(layer, index), blocks: undefined, bytes: 0, lastUse: 0 };
}

/** Puts a file into its place. Throws DataFileError where its tiles are another file's. */
function fill(file: SkyFile, decoded: TileFile): void {
  const byPixel = new Map<number, StarBlock[]>();
  for (const block of decoded.blocks) {
    const { layer, pixel } = homeOf(block.key);
    if (fileName(layer, fileIndex(layer, pixel)) !== file.name) throw strayFile(file.name);
    const inTile = byPixel.get(pixel);
    if (inTile) inTile.push(block);
    else byPixel.set(pixel, [block]);
  }
  file.blocks = byPixel;
  file.bytes = decoded.count * DECODED_STAR_BYTES;
}

function strayFile(name: string): DataFileError {
  return new DataFileError(
    `${name} holds tiles of another file`,
    "Put the original files of the sky back, each under its own name.",
  );
}

/** Empties the files longest unused until the cap holds; gives the blocks that went. */
function makeRoom(files: Iterable<SkyFile>, justLoaded: SkyFile, capBytes: number): Set<StarBlock> {
  const here = [...files].filter((file) => file.blocks);
  let total = here.reduce((sum, file) => sum + file.bytes, 0);
  const gone = new Set<StarBlock>();
  for (const file of here.sort((a, b) => a.lastUse - b.lastUse)) {
    if (total <= capBytes) break;
    if (file.layer.layer === 0 || file === justLoaded) continue;
    for (const inTile of file.blocks!.values()) for (const block of inTile) gone.add(block);
    total -= file.bytes;
    file.blocks = undefined;
  }
  return gone;
}
