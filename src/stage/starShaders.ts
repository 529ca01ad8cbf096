/**
 * How a star looks. With d = limit - V: f = 10^(.248 d), peak = min(1, .27 f), sigma = .82 max(1, (.27 f)^.36) px; the
 * light ends at 2.7 sigma and is smooth on the way, so that the flux does not depend on where in the pixel the star
 * stands. Common practice for the eye's point image, no source. Where air and aperture spread the image, sigma grows and the
 * light thins out. On a screen that hides the faintest they are lifted: peak^lift, which leaves the brightest as they are;
 * and where a screen's least is known, no star from the limit up is thinned to less.
 */
import { NOTICING } from "#core/eye/noticing.ts";
import { GAZE, STAR_GAZE } from "./gaze.ts";
import { FRAME, PROJECT, THROUGH, TONE } from "./glsl.ts";
import { LIMIT_PEAK, PEAK_DEX_PER_MAG } from "./screenLight.ts";
import { STEADY_MILLI } from "./starGather.ts";
import { APART, NOTICE, STARLIGHT } from "./starlight.ts";
import { COLOUR } from "./starTones.ts";

/** Stars this much fainter than the limit are noticed now and then. */
export const BELOW_LIMIT_MAG = NOTICING.edgeMag;
/** Stars this much brighter than the limit have glare; they are drawn as quads, all others as points. */
export const GLARE_MAG = 2.6;
/** Reach of glare at that magnitude, and by how much it grows with each magnitude more; star px. */
export const GLARE_PX = 7;
export const GLARE_PX_PER_MAG = 7.5;

const LAW = `
const float GLARE = ${GLARE_MAG.toFixed(2)};
const float NORM_TO_MAG = 32.767;
uniform vec2 uLift;
struct Look { float peak; float radius; };
Look lookOf(float d, float spread) {
  float grown = ${(PEAK_DEX_PER_MAG * Math.log2(10)).toFixed(6)} * d;
  float log2f = ${Math.log2(LIMIT_PEAK).toFixed(6)} + grown - log2(spread);
  float least = uLift.y * exp2(uLift.x * min(0., grown));
  return Look(min(1., max(least, exp2(uLift.x * log2f))), 2.7 * .82 * max(1., exp2(.36 * log2f)) * sqrt(spread) * uLook.y);
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

const STAR_IN = `
in vec3 aDir;
in vec2 aMagColour;
float overLimit() { return uLook.x - aMagColour.x * NORM_TO_MAG; }
bool isSteady() { return aMagColour.y * NORM_TO_MAG > ${(STEADY_MILLI / 2000).toFixed(1)}; }
float colourBV() { return aMagColour.y * NORM_TO_MAG - (isSteady() ? ${(STEADY_MILLI / 1000).toFixed(1)} : 0.); }
Moment moment(uint hash) { return momentOf(aDir, hash, isSteady()); }
`;
/** Corner of a quad: the four copies of a star are its corners in turn. */
const CORNER = `
vec2 cornerOf() { return vec2(gl_VertexID & 1, (gl_VertexID >> 1) & 1) * 2. - 1.; }
`;

/** Points are white: up to `GLARE_MAG` over the limit a colour would change no channel by more than 3 %. No brighter star heeds the gaze. */
export const POINT_VERTEX = [
  FRAME,
  PROJECT,
  THROUGH,
  LAW,
  STARLIGHT,
  GAZE,
  STAR_GAZE,
  NOTICE,
  STAR_IN,
  `flat out vec2 vCentre;
   flat out vec4 vLight;
   void main() {
     vCentre = windowOf(viewOf(aDir));
     float d = underGaze(overLimit(), vCentre);
     uint hash = hashOf(aDir);
     Moment now = moment(hash);
     Look look = lookOf(d + now.mag + comesUp(d), now.spread);
     float light = look.peak * throughFor(distance(vCentre, uField.xy), 1.) * noticedAt(d, hash);
     vLight = vec4((uLamp.w > .5 ? uLamp.rgb : vec3(1.)) * light, 1. / (look.radius * look.radius));
     gl_PointSize = 2. * look.radius + .25;
     gl_Position = light < .002 ? NOWHERE : clipOf(vCentre);
   }`,
];
export const POINT_FRAGMENT = [
  PROFILE,
  `flat in vec2 vCentre;
   flat in vec4 vLight;
   void main() {
     vec2 away = gl_FragCoord.xy - vCentre;
     outColour = vec4(vLight.rgb * profile(dot(away, away) * vLight.w), 1.);
   }`,
];

/** The star itself where it has glare: 70 % white within a quarter of its reach, its own colour from half of it on. */
export const CORE_VERTEX = [
  FRAME,
  PROJECT,
  TONE,
  LAW,
  COLOUR,
  STARLIGHT,
  APART,
  STAR_IN,
  CORNER,
  `flat out vec2 vCentre;
   flat out vec3 vTint;
   flat out vec3 vCore;
   flat out float vReach;
   void main() {
     Moment now = moment(hashOf(aDir));
     float d = overLimit();
     Look look = lookOf(d + now.mag, now.spread);
     look.radius *= apart(aDir, look.radius);
     vec3 tint = tintOf(d, colourBV()) * (1. + now.hue * vec3(1., 0., -1.));
     vCentre = windowOf(viewOf(aDir));
     vTint = toneOf(tint) * look.peak;
     vCore = toneOf(mix(tint, vec3(1.), .7)) * look.peak;
     vReach = 1. / look.radius;
     gl_Position = clipOf(vCentre + cornerOf() * (look.radius + .5));
   }`,
];
export const CORE_FRAGMENT = [
  FRAME,
  THROUGH,
  PROFILE,
  `flat in vec2 vCentre;
   flat in vec3 vTint;
   flat in vec3 vCore;
   flat in float vReach;
   void main() {
     float t = distance(gl_FragCoord.xy, vCentre) * vReach;
     vec3 light = mix(vCore, vTint, smoothstep(.24, .5, t)) * profile(t * t);
     outColour = vec4(light * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
   }`,
];

/** Glare of alpha .05 + .045 q for q = d - 2.6; most of it in the inner quarter, and no edge to be seen: a rim about a star reads as mist. */
export const GLARE_VERTEX = [
  FRAME,
  PROJECT,
  TONE,
  LAW,
  COLOUR,
  STARLIGHT,
  APART,
  STAR_IN,
  CORNER,
  `out vec2 vAway;
   flat out vec3 vTint;
   flat out vec2 vVeil;
   void main() {
     float d = overLimit();
     float q = d - GLARE;
     float radius = (${GLARE_PX.toFixed(1)} + ${GLARE_PX_PER_MAG.toFixed(1)} * q) * uLook.y;
     float alpha = .05 + .045 * max(0., q + moment(hashOf(aDir)).mag);
     float narrow = apart(aDir, lookOf(d, 1.).radius);
     radius *= narrow;
     alpha *= narrow * narrow;
     vAway = cornerOf() * radius;
     vTint = toneOf(tintOf(d, colourBV())) * uLook.w * uRoom;
     vVeil = vec2(min(.4, 1.5 * alpha), 1. / radius);
     gl_Position = clipOf(windowOf(viewOf(aDir)) + vAway);
   }`,
];
const GLARE_IN = `
in vec2 vAway;
flat in vec3 vTint;
flat in vec2 vVeil;
float glow() {
  float left = max(0., 1. - length(vAway) * vVeil.y);
  return vVeil.x * left * left * left;
}
`;
export const GLARE_FRAGMENT = [GLARE_IN, "void main() { outColour = vec4(vTint * glow(), 1.); }"];
/** The same where the stop cuts into it. */
export const CUT_GLARE_FRAGMENT = [
  FRAME,
  THROUGH,
  GLARE_IN,
  `void main() {
     float seen = through(distance(gl_FragCoord.xy, uField.xy)) / max(1e-3, uLook.w);
     outColour = vec4(vTint * (glow() * seen), 1.);
   }`,
];
