/** The bytes of a tile file to blocks of stars. Nothing in the bytes is believed before it is checked. */
import { crc32 } from "#core/celestial/hash.ts";
import { MAX_ORDER } from "#core/celestial/healpix.ts";
import { DataFileError } from "#core/seams/errors.ts";
import type { StarBlock, TileKey } from "#core/seams/index.ts";
import { LEAST_ORDER, tileAxes } from "./tileAxes.ts";
import {
  BYTE_ORDER_MARK,
  CRC_BYTES,
  directoryBytes,
  HEADER_BYTES,
  MAGIC,
  STAR_BYTES,
  unpackCentiMag,
  unpackColourBV,
  VERSION,
} from "./tileFormat.ts";

export type TileFile = {
  /** Order of the layer's tiles; a block of a split tile lies one or more orders deeper. */
  readonly order: number;
  readonly layer: number;
  readonly epochYear: number;
  readonly count: number;
  readonly blocks: readonly StarBlock[];
};

type Header = {
  readonly order: number;
  readonly layer: number;
  readonly tiles: number;
  readonly firstCentiMag: number;
  readonly stars: number;
  readonly epochYear: number;
  readonly halfMags: number;
};

const COLOURS = Float32Array.from({ length: 32 }, (_, packed) => unpackColourBV(packed));

/** A file in the course of being read: where its columns begin, and the arrays that fill. */
type Reading = {
  readonly view: DataView;
  readonly header: Header;
  readonly name: string;
  readonly columns: number;
  readonly dirs: Float32Array;
  readonly milliMag: Int16Array;
  readonly colourBV: Float32Array;
};

/**
 * Reads a whole file. Directions are bit-equal in every engine. Throws DataFileError, with `name` in it, where the bytes are
 * not a tile file, are cut short or too long, are damaged, or contradict themselves.
 */
export function decodeTileFile(bytes: Uint8Array, name: string): TileFile {
  const reading = openFile(bytes, name);
  const { view, header } = reading;
  const blocks: StarBlock[] = [];
  let lastTile = 0;
  let from = 0;
  for (let i = 0; i < header.tiles; i++) {
    const at = HEADER_BYTES + directoryBytes(i, header.halfMags);
    const unique = view.getUint32(at, true);
    refuseUnless(unique > lastTile, name, "its tiles are not in order");
    lastTile = unique;
    const key = keyOf(unique, header, name);
    const to = readMagnitudes(reading, at + 4, from);
    readPlaces(reading, key, from, to);
    blocks.push(blockOf(reading, key, from, to));
    from = to;
  }
  refuseUnless(from === header.stars, name, `its tiles hold ${from} stars, its header says ${header.stars}`);
  return { order: header.order, layer: header.layer, epochYear: header.epochYear, count: header.stars, blocks };
}

/** Checks header, length and checksum; only then is anything allocated. */
function openFile(bytes: Uint8Array, name: string): Reading {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const header = readHeader(view, name);
  const columns = HEADER_BYTES + directoryBytes(header.tiles, header.halfMags);
  const body = columns + header.stars * STAR_BYTES;
  const fits = bytes.length === body + CRC_BYTES;
  refuseUnless(fits, name, `it should be ${body + CRC_BYTES} bytes long, not ${bytes.length}`);
  refuseUnless(view.getUint32(body, true) === crc32(bytes.subarray(0, body)), name, "its checksum does not fit");
  return {
    view,
    header,
    name,
    columns,
    dirs: new Float32Array(3 * header.stars),
    milliMag: new Int16Array(header.stars),
    colourBV: new Float32Array(header.stars),
  };
}

function blockOf(reading: Reading, key: TileKey, from: number, to: number): StarBlock {
  return {
    key,
    count: to - from,
    dirs: reading.dirs.subarray(3 * from, 3 * to),
    milliMag: reading.milliMag.subarray(from, to),
    colourBV: reading.colourBV.subarray(from, to),
    invented: false,
  };
}

function readHeader(view: DataView, name: string): Header {
  refuseUnless(view.byteLength >= HEADER_BYTES + CRC_BYTES, name, `it is only ${view.byteLength} bytes long`);
  refuseUnless(view.getUint32(0, true) === MAGIC, name, "it does not begin like one");
  refuseUnless(view.getUint16(4, true) === BYTE_ORDER_MARK, name, "its byte order is wrong");
  const version = view.getUint16(6, true);
  refuseUnless(version === VERSION, name, `it is of version ${version}, this program reads version ${VERSION}`);
  return {
    order: view.getUint8(8),
    layer: view.getUint8(9),
    tiles: view.getUint16(16, true),
    firstCentiMag: view.getInt16(18, true),
    stars: view.getUint32(20, true),
    epochYear: view.getUint16(24, true) / 10,
    halfMags: view.getUint16(26, true),
  };
}

function keyOf(unique: number, header: Header, name: string): TileKey {
  let order = 0;
  // By multiplying, not by shifts: a number from outside may be of any size.
  let first = 4;
  for (; unique >= 4 * first; first *= 4) order += 1;
  const fits = order >= Math.max(header.order, LEAST_ORDER) && order <= MAX_ORDER && header.layer < 64;
  refuseUnless(fits, name, `it names a tile that cannot be (${unique})`);
  return { order, pixel: unique - first, layer: header.layer };
}

/** Reads the magnitudes and colours of a tile and holds them against its index; gives where the tile ends. */
function readMagnitudes({ view, header, name, columns, milliMag, colourBV }: Reading, indexAt: number, from: number) {
  const columnAt = columns + 4 * header.stars;
  let at = from;
  let last = 0;
  for (let half = 0; half < header.halfMags; half++) {
    const end = at + view.getUint16(indexAt + 2 * half, true);
    refuseUnless(end <= header.stars, name, "its index counts more stars than it has");
    const upper = header.firstCentiMag + 50 * (half + 1);
    for (; at < end; at++) {
      const packed = view.getUint16(columnAt + 2 * at, true);
      const centiMag = unpackCentiMag(packed >> 5);
      const inHalf = centiMag <= upper && (half === 0 || centiMag > upper - 50) && packed >> 5 >= last;
      refuseUnless(inHalf, name, "its stars are not in the order of its index");
      last = packed >> 5;
      milliMag[at] = centiMag * 10;
      colourBV[at] = COLOURS[packed & 31]!;
    }
  }
  return at;
}

function readPlaces({ view, header, columns, dirs }: Reading, key: TileKey, from: number, to: number): void {
  const { centre, east, north, halfWidth } = tileAxes(key.order, key.pixel);
  const step = (2 * halfWidth) / 65535;
  for (let i = from; i < to; i++) {
    const at = columns + 2 * i;
    const u = view.getUint16(at, true) * step - halfWidth;
    const v = view.getUint16(at + 2 * header.stars, true) * step - halfWidth;
    const shrink = 1 / Math.sqrt(1 + u * u + v * v);
    dirs[3 * i] = (centre[0] + east[0] * u + north[0] * v) * shrink;
    dirs[3 * i + 1] = (centre[1] + east[1] * u + north[1] * v) * shrink;
    dirs[3 * i + 2] = (centre[2] + north[2] * v) * shrink;
  }
}

function refuseUnless(holds: boolean, name: string, what: string): void {
  if (holds) return;
  throw new DataFileError(
    `${name} is not a usable star tile file: ${what}`,
    "Load it again; if it stays so, the copy on the server is damaged: put the original file back.",
  );
}
