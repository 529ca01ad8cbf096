/** Hashes of integers and bytes, all in 32-bit integer arithmetic: the same in every engine. */

/**
 * Mixes any number of 32-bit integers into one, unsigned. Each passes the finaliser of MurmurHash3 (A. Appleby, public
 * domain, constants from memory), so that neighbouring inputs give unrelated outputs. Order matters.
 */
export function mixHash32(...ints: readonly number[]): number {
  let h = 0x9e3779b9;
  for (let i = 0; i < ints.length; i++) h = mixHashOn(h, ints[i]!);
  return h;
}

/** A hash of {@link mixHash32} gone on with by one more integer, unsigned. */
export function mixHashOn(hash: number, int: number): number {
  return finalise(Math.imul(hash, 31) ^ finalise((int | 0) + 0x9e3779b9)) >>> 0;
}

function finalise(value: number): number {
  let h = value | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** FNV-1a of bytes, 32 bits, unsigned (Fowler, Noll & Vo); `seed` continues an earlier hash. */
export function fnv1a32(bytes: ArrayLike<number>, seed = 0x811c9dc5): number {
  let h = seed | 0;
  for (let i = 0; i < bytes.length; i++) h = Math.imul(h ^ (bytes[i]! & 255), 0x01000193);
  return h >>> 0;
}

const CRC_TABLE = crcTable();

function crcTable(): Uint32Array {
  const table = new Uint32Array(256);
  for (let n = 0; n < 256; n++) {
    let c = n;
    for (let bit = 0; bit < 8; bit++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
    table[n] = c;
  }
  return table;
}

/** CRC-32 of bytes (ISO-HDLC, the one of PNG and gzip), unsigned. */
export function crc32(bytes: ArrayLike<number>): number {
  let c = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) c = CRC_TABLE[(c ^ bytes[i]!) & 255]! ^ (c >>> 8);
  return (c ^ 0xffffffff) >>> 0;
}
