/**
 * The face of a disc of the solar system, as shader text: `bodyOf(at, form)` gives its light, and how much it hides. `at` is in
 * half axes of its picture, which is three discs wide; form is its kind, lit share or tilt, pole, B-V.
 */
import type { BodyForm } from "#core/field/objectLook.ts";

export const BODY_NUMBER: Readonly<Record<BodyForm, number>> = { globe: 0, moon: 1, banded: 2, ringed: 3, glow: 4 };

/**
 * The Moon's dark plains: place on the disc, east on the Moon and north, and radius, in the Moon's radii; from their listed
 * latitudes, longitudes and widths (from memory). Mare Imbrium, Serenitatis, Tranquillitatis, Crisium, Fecunditatis, Nectaris,
 * Nubium, Humorum, Oceanus Procellarum in two, Mare Insularum, Cognitum, Vaporum.
 */
const SEAS: readonly (readonly [number, number, number])[] = [
  [-0.23, 0.54, 0.31],
  [0.26, 0.47, 0.19],
  [0.5, 0.14, 0.23],
  [0.82, 0.29, 0.11],
  [0.77, -0.1, 0.18],
  [0.55, -0.26, 0.1],
  [-0.27, -0.36, 0.19],
  [-0.57, -0.41, 0.12],
  [-0.76, 0.34, 0.27],
  [-0.68, 0.0, 0.25],
  [-0.45, 0.08, 0.18],
  [-0.38, -0.17, 0.12],
  [0.07, 0.23, 0.08],
];
/** Young craters that shine at full Moon, likewise, and how far their rays reach: Tycho, Copernicus, Kepler, Aristarchus. */
const RAYS: readonly (readonly [number, number, number])[] = [
  [-0.14, -0.69, 0.6],
  [-0.34, 0.17, 0.22],
  [-0.61, 0.14, 0.14],
  [-0.67, 0.4, 0.1],
];
const list = (rows: readonly (readonly number[])[]) =>
  `vec3[${rows.length}](${rows.map((row) => `vec3(${row.map((value) => value.toFixed(3)).join(",")})`).join(",")})`;

/** Polar radius against the equator's: Jupiter, Saturn (Archinal et al. 2018; from memory). */
const FLAT = { jupiter: "0.935", saturn: "0.902" } as const;

export const BODIES = `
const vec3 SEAS[${SEAS.length}] = ${list(SEAS)};
const vec3 RAYS[${RAYS.length}] = ${list(RAYS)};
float lot(vec2 cell) { return fract(sin(dot(cell, vec2(12.9898, 78.233))) * 43758.5453); }
// Slopes of ringed hollows, one in a cell, towards the light: what stands in it is bright, what falls away is dark.
float slopes(vec2 at, vec2 light, float share) {
  vec2 cell = floor(at);
  vec2 off = fract(at) - .5 - .3 * vec2(lot(cell + 3.) - .5, lot(cell + 7.) - .5);
  float wide = .14 + .22 * lot(cell + 11.) * lot(cell + 5.);
  float t = length(off) / wide;
  float wall = smoothstep(.45, .85, t) * (1. - smoothstep(.85, 1.25, t));
  return -dot(off, light) / wide * wall * step(lot(cell), share);
}
float seaAt(vec2 m) {
  float dark = 0.;
  vec2 ragged = m + .022 * sin(13. * m.yx + 1.3) + .012 * sin(29. * m.yx + 2.) + .007 * sin(61. * m.xy + 4. * m.yx);
  for (int i = 0; i < ${SEAS.length}; i++) {
    vec2 off = (ragged - SEAS[i].xy) / SEAS[i].z;
    off.x /= sqrt(1.02 - SEAS[i].x * SEAS[i].x);
    dark = max(dark, 1. - smoothstep(.6, 1.12, length(off)));
  }
  // The cold sea is a band under the north pole.
  vec2 cold = (ragged - vec2(0., .81 - .25 * ragged.x * ragged.x)) / vec2(.42, .05);
  return max(dark, .7 * (1. - smoothstep(.5, 1.2, length(cold))));
}
float raysAt(vec2 m) {
  float bright = 0.;
  for (int i = 0; i < ${RAYS.length}; i++) {
    vec2 off = m - RAYS[i].xy;
    float r = length(off);
    float spokes = pow(.5 + .5 * sin(7. * atan(off.y, off.x) + 9. * RAYS[i].x), 3.);
    bright += .22 * exp(-r * r / .0016) + .2 * spokes * exp(-r / (.42 * RAYS[i].z)) * smoothstep(0., .05, r);
  }
  return bright;
}
vec4 moonOf(vec2 p, float r, float lit, float pole) {
  float z = sqrt(max(0., 1. - r * r));
  vec2 up = vec2(cos(pole), sin(pole));
  // East on the Moon is to the west of the sky.
  vec2 m = vec2(dot(p, vec2(up.y, -up.x)), dot(p, up));
  float full = 2. * lit - 1.;
  float side = sqrt(max(0., 1. - full * full));
  vec2 light = vec2(up.y, up.x) * side;
  float sea = seaAt(m);
  float rough = 1. - .8 * sea;
  float slope = slopes(m * 11., light, .55) + .8 * slopes(m * 23. + 4.7, light, .6);
  float sun = p.x * side + z * full + .16 * rough * slope * smoothstep(.75, 0., abs(p.x * side + z * full));
  // The full Moon is as bright at its limb as in its middle: rough ground sends light back where it came from.
  float day = pow(max(0., sun), mix(.42, .1, smoothstep(.6, 1., lit)));
  float face = (1. - .38 * sea) * (.86 + .05 * rough * slope) + raysAt(m) * (.35 + .65 * lit);
  float ashen = .055 * (1. - lit) * (1. - lit) * (1. - .4 * sea);
  return vec4(vec3(max(day * face, ashen)), 1.);
}
vec4 globeOf(vec2 p, float r, float lit) {
  float full = 2. * lit - 1.;
  float sun = p.x * sqrt(max(0., 1. - full * full)) + sqrt(max(0., 1. - r * r)) * full;
  return vec4(vec3(pow(max(0., sun), .35)), 1.);
}
float belt(float at, float middle, float wide) { float t = (at - middle) / wide; return exp(-t * t); }
vec3 bandsOf(float at, float r, float depth) {
  float dark = depth * (.36 * belt(at, .2, .07) + .3 * belt(at, -.22, .08) + .12 * belt(at, .5, .06) + .12 * belt(at, -.52, .06)
    + .22 * smoothstep(.6, 1., abs(at)));
  return (1. - dark * vec3(.85, 1., 1.15)) * pow(max(0., 1. - r * r), .22);
}
vec4 ringAt(vec2 p, float tilt) {
  float open = max(.03, abs(tilt));
  float r = length(vec2(p.x / open, p.y));
  float soft = fwidth(r) * .7 + .015;
  float inner = smoothstep(1.5 - soft, 1.5 + soft, r) * .95 + smoothstep(1.24 - soft, 1.24 + soft, r) * .05;
  float gap = smoothstep(1.94 - soft, 1.94 + soft, r) * (1. - smoothstep(2.04 - soft, 2.04 + soft, r));
  float outer = mix(1., .68, smoothstep(1.94, 2.04, r)) * (1. - smoothstep(2.27 - soft, 2.27 + soft, r));
  return vec4(vec3(.92 * inner * outer * (1. - .85 * gap)), inner * (1. - smoothstep(2.2, 2.3, r)));
}
// What air and eye scatter about a dazzling light: a core that hides how small the disc is, and a wide veil.
vec4 glowOf(float t) {
  float left = max(0., 1. - t);
  float left4 = left * left * left * left;
  return vec4(vec3(.9 * pow(left4, 5.) + .24 * left4), 0.);
}
vec4 bodyOf(vec2 at, vec4 form) {
  if (form.x > 3.5) return glowOf(length(at));
  vec2 p = at * 3.;
  int kind = int(form.x + .5);
  vec2 squashed = vec2(p.x / (kind == 2 ? ${FLAT.jupiter} : kind == 3 ? ${FLAT.saturn} : 1.), p.y);
  float r = length(squashed);
  float edge = .5 * fwidth(r) + .004;
  float inside = 1. - smoothstep(1. - edge, 1. + edge, r);
  float held = min(r, .999);
  vec4 disc = kind == 1 ? moonOf(p, held, form.y, form.z) : kind == 0 ? globeOf(p, held, form.y)
    : vec4(bandsOf(squashed.x - .12 * form.y * sqrt(1. - held * held), held, kind == 2 ? 1. : .45), 1.);
  disc *= inside;
  float shine = kind < 2 ? form.y : 1.;
  vec3 haze = vec3((kind == 1 ? .2 : .5) * shine * exp(-1.6 * max(0., r - .6)) * max(0., 1. - dot(at, at)));
  if (kind < 3) return vec4(max(disc.rgb, haze), disc.a);
  vec4 ring = ringAt(p, form.y);
  // The near side of the ring crosses the disc, the far side is behind it; the disc's shadow lies thin between.
  float near = step(0., -p.x * form.y);
  float before = ring.a * max(near, 1. - inside);
  return vec4(max(mix(disc.rgb, ring.rgb, before), haze), max(disc.a, before));
}
`;
