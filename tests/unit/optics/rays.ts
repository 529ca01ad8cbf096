/** A small ray tracer: one ray through the middle of the objective, plane mirrors, one eyepiece, an observer's eyes. */

export type Vec = readonly [number, number, number];
type Ray = { readonly at: Vec; readonly way: Vec };
type Mirror = { readonly at: Vec; readonly normal: Vec };

export const dot = (a: Vec, b: Vec) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const scaled = (a: Vec, k: number): Vec => [a[0] * k, a[1] * k, a[2] * k];
export const plus = (a: Vec, b: Vec): Vec => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vec, b: Vec): Vec => plus(a, scaled(b, -1));
export const unit = (a: Vec): Vec => scaled(a, 1 / Math.sqrt(dot(a, a)));
export const cross = (a: Vec, b: Vec): Vec => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

const distanceTo = (ray: Ray, mirror: Mirror) =>
  dot(minus(mirror.at, ray.at), mirror.normal) / dot(ray.way, mirror.normal);

function reflected(ray: Ray, mirror: Mirror): Ray {
  const at = plus(ray.at, scaled(ray.way, distanceTo(ray, mirror)));
  return { at, way: minus(ray.way, scaled(mirror.normal, 2 * dot(ray.way, mirror.normal))) };
}

/** A thin lens on an axis: the ray's slope changes by its distance from the axis over the focal length. */
function throughLens(ray: Ray, at: Vec, axis: Vec, focalLength: number): Vec {
  const t = dot(minus(at, ray.at), axis) / dot(ray.way, axis);
  const offAxis = minus(plus(ray.at, scaled(ray.way, t)), at);
  return minus(scaled(ray.way, 1 / dot(ray.way, axis)), scaled(offAxis, 1 / focalLength));
}

const OBJECTIVE = 1000;
const TO_MIRROR = 800;
export type Build = "galilean" | "keplerian" | "newtonian" | "mirrorDiagonal" | "roofDiagonal";

/**
 * The direction that light has when it leaves the eyepiece, and the eyepiece's axis towards the eye.
 * @param forward where the tube points
 * @param out where the eyepiece stands, square to it
 * @param star direction of the star's place
 */
export function lightFrom(build: Build, forward: Vec, out: Vec, star: Vec): { light: Vec; axis: Vec } {
  const inward: Ray = { at: [0, 0, 0], way: scaled(star, -1) };
  const eyepiece = build === "galilean" ? -50 : 25;
  const down = scaled(forward, -1);
  if (build === "galilean" || build === "keplerian") {
    const at = scaled(down, OBJECTIVE + eyepiece);
    return { light: throughLens(inward, at, down, eyepiece), axis: down };
  }
  if (build === "newtonian") {
    // The primary's middle reflects like a flat; its power shows in where the eyepiece has to stand.
    const up = reflected(inward, { at: [0, 0, 0], normal: forward });
    const flat = { at: scaled(forward, TO_MIRROR), normal: unit(minus(forward, out)) };
    const at = plus(flat.at, scaled(out, OBJECTIVE - TO_MIRROR + eyepiece));
    return { light: throughLens(reflected(up, flat), at, out, eyepiece), axis: out };
  }
  const middle = scaled(down, TO_MIRROR);
  const at = plus(middle, scaled(out, OBJECTIVE - TO_MIRROR + eyepiece));
  const normal = unit(plus(forward, out));
  if (build === "mirrorDiagonal") {
    return { light: throughLens(reflected(inward, { at: middle, normal }), at, out, eyepiece), axis: out };
  }
  const across = unit(cross(forward, out));
  const faces = [unit(plus(normal, across)), unit(minus(normal, across))].map((n) => ({ at: middle, normal: n }));
  faces.sort((a, b) => distanceTo(inward, a) - distanceTo(inward, b));
  const twice = faces.reduce(reflected, inward);
  return { light: throughLens(twice, at, out, eyepiece), axis: out };
}

/** Where an observer sees that light, x right and y up, with `up` on top. */
export function seenAt(light: Vec, axis: Vec, up: Vec): readonly [number, number] {
  const look = scaled(axis, -1);
  const top = unit(minus(up, scaled(look, dot(up, look))));
  const right = cross(look, top);
  const from = scaled(light, -1);
  return [dot(from, right) / dot(from, look), dot(from, top) / dot(from, look)];
}
