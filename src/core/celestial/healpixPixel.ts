/**
 * HEALPix pixels of the sphere (Gorski et al. 2005, ApJ 622, 759), nested numbering, orders 0 to 10. A pixel of order k is
 * `face * 4^k + interleaved bits of x and y`; x grows to the north-east and y to the north-west of its base pixel.
 * Only exact mathematics: the same pixel in every engine.
 */
import type { Dir } from "#core/seams/index.ts";
import { exactAtan2, exactCircle } from "./exactMath.ts";
import { FACE_BEYOND, FACE_LONGITUDE, FACE_ROW, STEP_X, STEP_Y, TURN_BEYOND } from "./healpixTables.ts";

export const MAX_ORDER = 10;

/** Bits of a number below 1024 spread to the even places. */
function spread(v: number): number {
  let b = (v | (v << 8)) & 0x00ff00ff;
  b = (b | (b << 4)) & 0x0f0f0f0f;
  b = (b | (b << 2)) & 0x33333333;
  return (b | (b << 1)) & 0x55555555;
}

/** The even bits of a number below 2^20 drawn together. */
function gathered(v: number): number {
  let b = v & 0x55555555;
  b = (b | (b >> 1)) & 0x33333333;
  b = (b | (b >> 2)) & 0x0f0f0f0f;
  b = (b | (b >> 4)) & 0x00ff00ff;
  return (b | (b >> 8)) & 0xffff;
}

function pixelAt(order: number, face: number, x: number, y: number): number {
  return (face << (2 * order)) | spread(x) | (spread(y) << 1);
}

/** The pixel that holds a direction. `order` 0 to 10. */
export function pixelOf(order: number, dir: Dir): number {
  const [x, y, z] = dir;
  const side = 1 << order;
  const quarter = exactAtan2(y, x) / (Math.PI / 2);
  const tt = quarter < 0 ? quarter + 4 : quarter;
  return Math.abs(z) <= 2 / 3 ? beltPixel(order, side, tt, z) : capPixel(order, side, tt, x, y, z);
}

function beltPixel(order: number, side: number, tt: number, z: number): number {
  const along = side * (0.5 + tt);
  const across = side * z * 0.75;
  const down = Math.floor(along - across);
  const up = Math.floor(along + across);
  const faceDown = down >> order;
  const faceUp = up >> order;
  const face = faceDown === faceUp ? faceDown | 4 : faceDown < faceUp ? faceDown : faceUp + 8;
  return pixelAt(order, face, up & (side - 1), side - (down & (side - 1)) - 1);
}

function capPixel(order: number, side: number, tt: number, x: number, y: number, z: number): number {
  const sector = Math.min(3, Math.floor(tt));
  const part = tt - sector;
  // side * sqrt(3 (1 - |z|)) without the loss of digits near the pole.
  const reach = side * Math.sqrt((3 * (x * x + y * y)) / (1 + Math.abs(z)));
  const down = Math.min(side - 1, Math.floor(part * reach));
  const up = Math.min(side - 1, Math.floor((1 - part) * reach));
  return z >= 0 ? pixelAt(order, sector, side - up - 1, side - down - 1) : pixelAt(order, sector + 8, down, up);
}

/** Writes the direction of the place (x, y), each 0 to 1, of a base pixel. */
function placeOfFace(face: number, x: number, y: number, out: { [i: number]: number }): void {
  const row = FACE_ROW[face]! - x - y;
  const fromPole = row < 1 ? row : row > 3 ? 4 - row : 1;
  const drop = (fromPole * fromPole) / 3;
  const z = row < 1 ? 1 - drop : row > 3 ? drop - 1 : ((2 - row) * 2) / 3;
  const radius = row < 1 || row > 3 ? Math.sqrt(drop * (2 - drop)) : Math.sqrt(1 - z * z);
  const eighths = FACE_LONGITUDE[face]! * fromPole + x - y;
  const phi = fromPole < 1e-15 ? 0 : ((Math.PI / 4) * eighths) / fromPole;
  exactCircle(phi, radius, out);
  out[2] = z;
}

/** Writes the direction of the place (dx, dy), each 0 to 1, of a pixel. */
export function placeOfPixel(order: number, pixel: number, dx: number, dy: number, out: { [i: number]: number }): void {
  const size = 1 / (1 << order);
  const inFace = pixel & ((1 << (2 * order)) - 1);
  placeOfFace(pixel >> (2 * order), (gathered(inFace) + dx) * size, (gathered(inFace >> 1) + dy) * size, out);
}

function dirOfPlace(order: number, pixel: number, dx: number, dy: number): Dir {
  const place: [number, number, number] = [0, 0, 0];
  placeOfPixel(order, pixel, dx, dy, place);
  return place;
}

/** Direction of a pixel's centre. */
export function pixelCentre(order: number, pixel: number): Dir {
  return dirOfPlace(order, pixel, 0.5, 0.5);
}

/** Directions of a pixel's corners: south, east, north, west. */
export function pixelCorners(order: number, pixel: number): readonly [Dir, Dir, Dir, Dir] {
  return [
    dirOfPlace(order, pixel, 0, 0),
    dirOfPlace(order, pixel, 1, 0),
    dirOfPlace(order, pixel, 1, 1),
    dirOfPlace(order, pixel, 0, 1),
  ];
}

/** The pixels that touch this one at an edge or a corner: eight, or seven or fewer where base pixels meet by threes. */
export function neighbours(order: number, pixel: number): number[] {
  const side = 1 << order;
  const face = pixel >> (2 * order);
  const inFace = pixel & (side * side - 1);
  const found: number[] = [];
  for (let i = 0; i < 8; i++) {
    const near = beyond(order, face, gathered(inFace) + STEP_X[i]!, gathered(inFace >> 1) + STEP_Y[i]!);
    if (near >= 0 && !found.includes(near)) found.push(near);
  }
  return found;
}

/** The pixel at (x, y) counted in one base pixel, which may lie one step outside it; -1 where there is none. */
function beyond(order: number, face: number, x: number, y: number): number {
  const side = 1 << order;
  const row = 4 + (x < 0 ? -1 : x >= side ? 1 : 0) + (y < 0 ? -3 : y >= side ? 3 : 0);
  const nextFace = FACE_BEYOND[row]![face]!;
  if (nextFace < 0) return -1;
  const turn = TURN_BEYOND[row]![face >> 2]!;
  const inX = x & (side - 1);
  const inY = y & (side - 1);
  const turnedX = turn & 1 ? side - 1 - inX : inX;
  const turnedY = turn & 2 ? side - 1 - inY : inY;
  return turn & 4 ? pixelAt(order, nextFace, turnedY, turnedX) : pixelAt(order, nextFace, turnedX, turnedY);
}
