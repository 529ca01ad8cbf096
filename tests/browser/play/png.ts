/** Reads the PNG files that the browser's screenshots are: 8 bits a channel, no interlace. */
import { inflateSync } from "node:zlib";

export interface Pixels {
  readonly width: number;
  readonly height: number;
  /** Channels of a pixel: 3 or 4. */
  readonly channels: number;
  /** Rows from the top down. */
  readonly bytes: Uint8Array;
}

const SIGNATURE_BYTES = 8;
const COLOUR_TYPES: Readonly<Record<number, number>> = { 2: 3, 6: 4 };

function* chunksOf(file: Buffer): Generator<{ readonly type: string; readonly data: Buffer }> {
  for (let at = SIGNATURE_BYTES; at < file.length; ) {
    const length = file.readUInt32BE(at);
    yield { type: file.toString("latin1", at + 4, at + 8), data: file.subarray(at + 8, at + 8 + length) };
    at += length + 12;
  }
}

/** The guess nearest to left + up - corner, of the three themselves (PNG, 3rd edition, 9.4). */
function paeth(left: number, up: number, corner: number): number {
  const guess = left + up - corner;
  const [byLeft, byUp, byCorner] = [Math.abs(guess - left), Math.abs(guess - up), Math.abs(guess - corner)];
  if (byLeft <= byUp && byLeft <= byCorner) return left;
  return byUp <= byCorner ? up : corner;
}

/** What each kind of filter takes off a byte (PNG, 3rd edition, 9.2). */
const GUESSES: readonly ((left: number, up: number, corner: number) => number)[] = [
  () => 0,
  (left) => left,
  (_, up) => up,
  (left, up) => (left + up) >> 1,
  paeth,
];

function unfilterRow(filter: number, row: Uint8Array, before: Uint8Array, channels: number): void {
  if (filter === 0) return;
  const guess = GUESSES[filter]!;
  for (let i = 0; i < channels; i++) row[i]! += guess(0, before[i]!, 0);
  for (let i = channels; i < row.length; i++) row[i]! += guess(row[i - channels]!, before[i]!, before[i - channels]!);
}

/** @throws Error where the file is of another kind */
export function readPng(file: Buffer): Pixels {
  let [width, height, channels] = [0, 0, 0];
  const packed: Buffer[] = [];
  for (const { type, data } of chunksOf(file)) {
    if (type === "IDAT") packed.push(data);
    if (type !== "IHDR") continue;
    [width, height] = [data.readUInt32BE(0), data.readUInt32BE(4)];
    channels = COLOUR_TYPES[data[9]!] ?? 0;
    if (data[8] !== 8 || channels === 0 || data[12] !== 0) throw new Error("a PNG of an unknown kind");
  }
  const raw = inflateSync(Buffer.concat(packed));
  const rowBytes = width * channels;
  const bytes = new Uint8Array(rowBytes * height);
  let before: Uint8Array = new Uint8Array(rowBytes);
  for (let y = 0; y < height; y++) {
    const start = y * (rowBytes + 1);
    const row = bytes.subarray(y * rowBytes, (y + 1) * rowBytes);
    row.set(raw.subarray(start + 1, start + 1 + rowBytes));
    unfilterRow(raw[start]!, row, before, channels);
    before = row;
  }
  return { width, height, channels, bytes };
}
