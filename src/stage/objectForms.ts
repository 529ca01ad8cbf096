/** The forms in which objects glow, as shader text: light by place within the listed ellipse, 1 at the brightest. */
import { type LightForm, TAIL_REACH } from "#core/field/objectLook.ts";

/** The numbers that the shader knows the forms by; 0 is a plain veil. */
export const FORM_NUMBER: Readonly<Record<LightForm, number>> = {
  disc: 1,
  bulge: 2,
  granules: 3,
  plate: 4,
  ring: 5,
  cloud: 6,
  shell: 7,
  lamplit: 8,
  coma: 9,
};

/**
 * `lightOf(at, look, cells)`: at in half axes from the middle, x along the major one; look is form, seed, resolved share and
 * cut; cells is how many granules lie along half the major axis. Clouds are waves that bend each other: soft forms without a
 * seam, each seed another. What lies under the cut is not made out, and the eye takes the rest up more evenly than a meter.
 * A bend leaves the middle where it is listed, and reaches a little past the ellipse: all is drawn so much smaller. Granules are
 * a mist with many faint stars, and among them, on a wider net that is turned, the few giants. A cloud is brightest about the
 * stars that light it, near its listed place, and one wing reaches further than the other. A comet's picture is as wide as its
 * tail is long, which lies along x, away from the Sun.
 */
export const FORMS = `
float veil(float t) {
  return t < .35 ? mix(1., .82, t / .35) : t < .65 ? mix(.82, .36, (t - .35) / .3) : mix(.36, 0., min(1., (t - .65) / .35));
}
float fade(float t) { float u = clamp(1. - t * t, 0., 1.); return u * sqrt(u); }
float chance(ivec2 cell, float seed) {
  uint n = uint(cell.x) * 0x9E3779B1u ^ uint(cell.y) * 0x85EBCA77u ^ floatBitsToUint(seed);
  n ^= n >> 16; n *= 0x7FEB352Du; n ^= n >> 15; n *= 0x846CA68Bu; n ^= n >> 16;
  return float(n >> 8) / 16777216.;
}
vec2 waved(vec2 at, vec2 phase, float by) {
  vec2 once = at + by * sin(2.1 * at.yx + phase);
  return once + .5 * by * sin(4.6 * once.yx + phase.yx * 1.7);
}
vec2 bent(vec2 at, float seed, float by) {
  vec2 phase = vec2(seed * 61.7, seed * 97.3);
  return waved(at, phase, by) - waved(vec2(0.), phase, by) * exp(-3. * dot(at, at));
}
float disc(vec2 at, float seed) {
  vec2 p = bent(at, seed, .05);
  float t = length(p);
  float core = .25 + .6 * fract(seed * 7.31);
  float arms = 1. + .14 * smoothstep(.12, .5, t) * sin(2. * atan(p.y, p.x) - 5. * t + seed * 40.);
  return (exp(-3.2 * t) * arms + core * exp(-t * t / .008)) / (1. + core) * fade(t);
}
float bulge(vec2 at) {
  float t = length(at) / .13;
  return fade(length(at)) / (1. + t * sqrt(t));
}
float grains(vec2 place, float seed, float share, float least) {
  ivec2 cell = ivec2(floor(place));
  float here = step(chance(cell, seed), share);
  vec2 off = vec2(chance(cell, seed + 1.), chance(cell, seed + 2.)) * .6 + .2;
  float size = chance(cell, seed + 3.);
  return here * (least + (1. - least) * size * size) * max(0., 1. - 2.9 * distance(fract(place), off));
}
float granules(vec2 at, vec4 look, float cells) {
  float t = length(at) / .2;
  float smoothly = fade(length(at)) / (1. + t * t);
  float share = look.z * min(.85, 2.6 * smoothly);
  vec2 turned = vec2(.83 * at.x - .56 * at.y, .56 * at.x + .83 * at.y) * cells * .62;
  float stars = max(.9 * grains(at * cells + .5, look.y, share, .2), 1.5 * grains(turned + .5, look.y + 5., .4 * share, .35));
  return smoothly * (1. - .2 * look.z) + stars;
}
float plate(vec2 at, float seed) {
  float t = length(bent(at, seed, .04));
  return (.86 + .14 * t * t) * (1. - smoothstep(.45, 1., t));
}
float ring(vec2 at, float seed) {
  vec2 p = bent(at, seed, .03);
  float t = length(p);
  float ends = 1. - .3 * p.x * p.x / max(t * t, 1e-4);
  float rim = smoothstep(.2, .62, t);
  return mix(.42, ends, rim) * (1. - smoothstep(.62, 1., t));
}
float cloud(vec2 at, float seed) {
  vec2 p = bent(at, seed, .3);
  float lumps = .62 + .38 * sin(3.1 * p.x + seed * 23.) * sin(2.7 * p.y + seed * 71.);
  vec2 way = vec2(sin(seed * 51.), cos(seed * 37.));
  vec2 wing = p - .3 * way;
  vec2 heart = p - .06 * way;
  return (.6 * lumps * exp(-2.4 * dot(wing, wing)) + .4 * exp(-16. * dot(heart, heart))) * fade(length(at));
}
float shell(vec2 at, float seed) {
  vec2 p = bent(at, seed, .1);
  float t = length(p);
  float broken = .5 + .5 * sin(2. * atan(p.y, p.x) + seed * 63. + 2. * t);
  float threads = .85 + .15 * sin(15. * t + 4. * p.x + seed * 17.);
  return broken * threads * smoothstep(.3, .76, t) * (1. - smoothstep(.72, 1., t)) + .14 * fade(t);
}
float lamplit(vec2 at, float seed) {
  float t = length(bent(at, seed, .12)) / .28;
  return fade(length(at)) / (1. + t * t);
}
float coma(vec2 at) {
  vec2 p = at * ${TAIL_REACH.toFixed(1)};
  float r = length(p);
  float head = (.64 / (1. + r / .13) + .36 * exp(-r * r / .008)) * fade(r);
  float wide = .3 + .22 * max(0., p.x);
  float thin = 1. - min(1., p.x / ${TAIL_REACH.toFixed(1)});
  float tail = .22 * smoothstep(-.1, .7, p.x) * thin * exp(-p.y * p.y / (wide * wide));
  return head + tail * fade(length(at));
}
float lightOf(vec2 at, vec4 look, float cells) {
  int form = int(look.x + .5);
  if (dot(at, at) > 1.) return 0.;
  if (form == 0) return veil(length(at));
  vec2 p = at * 1.08;
  float light =
    form == 1 ? disc(p, look.y) : form == 2 ? bulge(p) : form == 3 ? granules(p, look, cells) :
    form == 4 ? plate(p, look.y) : form == 5 ? ring(p, look.y) : form == 6 ? cloud(p, look.y) :
    form == 7 ? shell(p, look.y) : form == 8 ? lamplit(p, look.y) : coma(at);
  return pow(clamp((light - look.w) / (1. - look.w), 0., 1.), .75);
}
`;
