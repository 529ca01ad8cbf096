/**
 * How a star looks. With d = limit - V: f = 10^(.248 d), peak = min(1, .27 f), sigma = .82 max(1, (.27 f)^.36) px; the
 * light ends at 2.7 sigma and is smooth on the way, so that the flux does not depend on where in the pixel the star
 * stands. Common practice for the eye's point image, no source.
 */
import { FRAME, PROJECT, THROUGH, TONE } from "./glsl.ts";

/** Stars this much fainter than the limit are still drawn. */
export const BELOW_LIMIT_MAG = 0.2;
/** Stars this much brighter than the limit have glare; they are drawn as quads, all others as points. */
export const GLARE_MAG = 2.6;

const LAW = `
const float BELOW = ${BELOW_LIMIT_MAG.toFixed(2)};
const float GLARE = ${GLARE_MAG.toFixed(2)};
const float NORM_TO_MAG = 32.767;
struct Look { float peak; float radius; };
Look lookOf(float d) {
  float f = .27 * exp2(.248 * 3.321928 * d);
  return Look(min(1., f), 2.7 * .82 * max(1., pow(f, .36)) * uLook.y);
}
`;

/** Light by the square of the distance in 2.7 sigma: .83 at .24, .42 at half, .14 at .75; smooth to the end. */
const PROFILE = `
float profile(float t2) {
  float u = max(0., 1. - t2);
  float v = u * u;
  return .75 * v * v + .25 * u;
}
`;

const COLOUR = `
vec3 colourOf(float bv) {
  vec3 a = vec3(160., 190., 255.), b = vec3(205., 220., 255.), c = vec3(245., 245., 255.);
  vec3 d = vec3(255., 240., 214.), e = vec3(255., 214., 160.), f = vec3(255., 178., 112.);
  vec3 cool = bv < 0. ? mix(a, b, (bv + .3) / .3) : mix(b, c, bv / .4);
  vec3 warm = bv < .7 ? mix(c, d, (bv - .4) / .3) : bv < 1.1 ? mix(d, e, (bv - .7) / .4) : mix(e, f, (bv - 1.1) / .7);
  return (bv < .4 ? cool : warm) / 255.;
}
vec3 tintOf(float d, float bv) { return mix(vec3(1.), colourOf(bv), clamp((d - 2.2) / 3., 0., 1.) * .62); }
`;

const STAR_IN = `
in vec3 aDir;
in vec2 aMagColour;
bool offField(vec3 v) {
  float divisor = planeDivisor(v);
  float reach = max(uStop.x, uStop.w > 0. ? uStop.z + uStop.w : 0.) + 4. * uLook.y;
  return divisor <= .02 || length(v.xy) * uField.z > reach * divisor;
}
`;

export const POINT_VERTEX = [
  FRAME,
  PROJECT,
  TONE,
  LAW,
  COLOUR,
  STAR_IN,
  `flat out vec2 vCentre;
   flat out vec4 vLight;
   void main() {
     float d = uLook.x - aMagColour.x * NORM_TO_MAG;
     vec3 v = viewOf(aDir);
     gl_PointSize = 1.;
     gl_Position = NOWHERE;
     if (d < -BELOW || d > GLARE || offField(v)) return;
     Look look = lookOf(d);
     vCentre = windowOf(v);
     vLight = vec4(toneOf(tintOf(d, aMagColour.y * NORM_TO_MAG)) * look.peak, 1. / (look.radius * look.radius));
     gl_PointSize = 2. * look.radius + 1.;
     gl_Position = clipOf(vCentre);
   }`,
];
export const POINT_FRAGMENT = [
  FRAME,
  THROUGH,
  PROFILE,
  `flat in vec2 vCentre;
   flat in vec4 vLight;
   void main() {
     vec2 away = gl_FragCoord.xy - vCentre;
     outColour = vec4(vLight.rgb * profile(dot(away, away) * vLight.w) * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
   }`,
];

export const GLARE_VERTEX = [
  FRAME,
  PROJECT,
  TONE,
  LAW,
  COLOUR,
  STAR_IN,
  `in vec2 aCorner;
   flat out vec2 vCentre;
   flat out vec3 vTint;
   flat out vec3 vCore;
   flat out vec4 vShape;
   void main() {
     float d = uLook.x - aMagColour.x * NORM_TO_MAG;
     vec3 v = viewOf(aDir);
     gl_Position = NOWHERE;
     if (d <= GLARE) return;
     if (offField(v)) return;
     Look look = lookOf(d);
     float q = d - GLARE;
     float glare = (7. + 7.5 * q) * uLook.y;
     vec3 tint = tintOf(d, aMagColour.y * NORM_TO_MAG);
     vCentre = windowOf(v);
     vTint = toneOf(tint);
     vCore = toneOf(mix(tint, vec3(1.), .7));
     vShape = vec4(1. / look.radius, look.peak, 1. / glare, .05 + .045 * q);
     gl_Position = clipOf(vCentre + aCorner * (max(look.radius, glare) + 1.));
   }`,
];
export const GLARE_FRAGMENT = [
  FRAME,
  THROUGH,
  PROFILE,
  `flat in vec2 vCentre;
   flat in vec3 vTint;
   flat in vec3 vCore;
   flat in vec4 vShape;
   void main() {
     float away = distance(gl_FragCoord.xy, vCentre);
     float t = away * vShape.x;
     vec3 star = mix(vCore, vTint, smoothstep(.24, .5, t)) * (vShape.y * profile(t * t));
     float g = min(1., away * vShape.z);
     float inner = min(.4, 1.5 * vShape.w);
     float outer = min(.2, .5 * vShape.w);
     float glow = g < .25 ? mix(inner, outer, 4. * g) : outer * (1. - g) / .75;
     outColour = vec4((star + vTint * glow) * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
   }`,
];
