/** A printed page: where a direction stands on the paper, and back. North up, east to the left, px from the page's centre. */

import { stereographic } from "#core/celestial/projection.ts";
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import type { Dir } from "#core/seams/index.ts";

export interface ChartPage {
  readonly centre: Dir;
  /** Size of the paper and of the printed area within its frame, px at scale 1. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly marginPx: number;
  /** Scale at the centre. */
  readonly pxPerDeg: number;
  /** Faintest star printed, V. */
  readonly limitMag: number;
  /** For the naked eye: stars that it does not part are one dot, with one name. */
  readonly byEye?: true;
}

export type PagePoint = { x: number; y: number };

export interface PageProjection {
  /** Place of a direction: x right, y down, from the centre; false where it lies behind the sky's back. */
  project(dir: Dir, out: PagePoint): boolean;
  /** The direction of a place on the paper. */
  unproject(x: number, y: number): Dir;
  /** Whether a place lies within the frame, by a margin in px (negative: outside of it). */
  holds(point: PagePoint, insetPx?: number): boolean;
  readonly pxPerRad: number;
}

/** East, north and outward axes at a direction; at a pole north is the meridian of right ascension 0. */
function axesAt([x, y, z]: Dir): { east: Dir; north: Dir } {
  const flat = Math.sqrt(x * x + y * y);
  const [cosRa, sinRa] = flat > 1e-12 ? [x / flat, y / flat] : [1, 0];
  return { east: [-sinRa, cosRa, 0], north: [-z * cosRa, -z * sinRa, flat] };
}

/** Stereographic projection of a page: figures keep their shape, a field's ring stays a circle. */
export function projectionOf(page: ChartPage): PageProjection {
  const { centre } = page;
  const { east, north } = axesAt(centre);
  const pxPerRad = page.pxPerDeg / DEG;
  const plane = [0, 0];
  const vector = [0, 0, 0];
  const along = (axis: Dir, dir: Dir) => axis[0] * dir[0] + axis[1] * dir[1] + axis[2] * dir[2];
  return {
    pxPerRad,
    project(dir, out) {
      const depth = along(centre, dir);
      if (depth < -0.5 || !stereographic.project(-along(east, dir), along(north, dir), depth, plane)) return false;
      out.x = plane[0]! * pxPerRad;
      out.y = -plane[1]! * pxPerRad;
      return true;
    },
    unproject(x, y) {
      stereographic.unproject(x / pxPerRad, -y / pxPerRad, vector);
      const [u, v, w] = vector as [number, number, number];
      return [0, 1, 2].map((i) => -u * east[i]! + v * north[i]! + w * centre[i]!) as unknown as Dir;
    },
    holds(point, insetPx = 0) {
      const halfWidth = page.widthPx / 2 - page.marginPx - insetPx;
      const halfHeight = page.heightPx / 2 - page.marginPx - insetPx;
      return Math.abs(point.x) <= halfWidth && Math.abs(point.y) <= halfHeight;
    },
  };
}

/** Radius on the paper of a circle about a direction, px: the mean over a circle at the centre of the page. */
export const ringRadiusPx = (page: ChartPage, fieldDeg: number): number =>
  (2 * Math.tan((fieldDeg * DEG) / 4) * page.pxPerDeg) / DEG;

/** Angle from the centre to the corner of the printed area, radians: what the page needs stars for. */
export function reachRad(page: ChartPage): number {
  const halfWidth = page.widthPx / 2 - page.marginPx;
  const halfHeight = page.heightPx / 2 - page.marginPx;
  const corner = Math.sqrt(halfWidth * halfWidth + halfHeight * halfHeight) / (page.pxPerDeg / DEG);
  return 2 * Math.atan(corner / 2);
}

/** A direction from degrees. */
export const dirAtDeg = (raDeg: number, decDeg: number): Dir => dirFromRadec(raDeg * DEG, decDeg * DEG);
