/** Spikes of bright stars in a telescope with vanes: four thin lines that stand with the tube. Comes when first it is wanted. */
import type { WebGLRenderer } from "pixi.js";
import type { Frame } from "./frame.ts";
import type { MoreLight } from "./starLayer.ts";
import type { FieldSpikes, FieldView } from "./view.ts";

/** Half a line's width, px of a star unit, and the most light that it has: subtle (set by eye). */
const HALF_PX = 1.3;
const MOST_LIGHT = 0.3;
/** A star's light, drawn out along some five px, has so much of it a px (set by eye). */
const DRAWN_OUT = 0.4;
/** A spike is out where it is so much fainter than a star at the limit, and whole where it is so much brighter. */
const OUT_MAG = 0.4;
const WHOLE_MAG = 1;

const SPIKE = `
uniform vec3 uSpike;
uniform vec2 uAlong;
`;
/** `uSpike` is how far below the star it begins, mag; px of lambda / w; share of light in focus. */
const VERTEX = `
in vec3 aDir;
in vec2 aMagColour;
flat out vec2 vCentre;
flat out float vOver;
void main() {
  vOver = uLook.x - aMagColour.x * 32.767 - uSpike.x;
  vCentre = windowOf(viewOf(aDir));
  vec2 corner = vec2(gl_VertexID & 1, (gl_VertexID >> 1) & 1) * 2. - 1.;
  float reach = max(.75, sqrt(exp2(1.328771 * (vOver + ${OUT_MAG})) / 19.739209)) * uSpike.y;
  vec2 across = vec2(-uAlong.y, uAlong.x);
  gl_Position = vOver < 0. ? NOWHERE : clipOf(vCentre + uAlong * corner.x * reach + across * corner.y * ${(HALF_PX + 0.5).toFixed(1)} * uLook.y);
}`;
/** The light of core/optics/vanes.ts, as brightness over the limit by the law of the stars. */
const FRAGMENT = `
flat in vec2 vCentre;
flat in float vOver;
void main() {
  vec2 away = gl_FragCoord.xy - vCentre;
  float turn = 3.1415927 * max(1e-3, abs(dot(away, uAlong)) / uSpike.y);
  float wave = sin(turn) / turn;
  float over = vOver + .75257499 * log2(turn > ${(0.75 * Math.PI).toFixed(6)} ? .5 / (turn * turn) : wave * wave);
  float peak = min(${MOST_LIGHT}, ${DRAWN_OUT} * LIMIT_LIGHT * exp2(LOG2_PER_MAG * over));
  float across = dot(away, vec2(-uAlong.y, uAlong.x)) / (${HALF_PX} * uLook.y);
  float light = peak * smoothstep(-${OUT_MAG}, ${WHOLE_MAG.toFixed(1)}, over) * max(0., 1. - across * across) * uSpike.z;
  outColour = vec4(toneOf(vec3(1.)) * light * through(distance(gl_FragCoord.xy, uField.xy)), 1.);
}`;

/** Makes a light on the stars from shader text: given, so that what comes later takes nothing along. */
export type LightOf = (vertex: string, fragment: string, uniforms: Readonly<Record<string, 2 | 3>>) => MoreLight;
export type DrawSpikes = (renderer: WebGLRenderer, view: FieldView, spikes: FieldSpikes) => void;

/** Draws the spikes of the stars that were drawn before in the same frame. */
export const createSpikes = (frame: Frame, lightOf: LightOf): DrawSpikes => {
  const cross = [0, 1].map(() => lightOf(SPIKE + VERTEX, SPIKE + FRAGMENT, { uSpike: 3, uAlong: 2 }));
  return (renderer, view, { top, belowMag, vaneRad }) => {
    const m = view.viewFromIcrs;
    const x = m[0]! * top[0]! + m[1]! * top[1]! + m[2]! * top[2]!;
    const y = m[3]! * top[0]! + m[4]! * top[1]! + m[5]! * top[2]!;
    const length = Math.sqrt(x * x + y * y) || 1;
    const defocus = view.defocus ?? 0;
    for (let i = 0; i < cross.length; i++) {
      const uSpike = cross[i]!.uniforms.uSpike!;
      const uAlong = cross[i]!.uniforms.uAlong!;
      uAlong[0] = (i === 0 ? x : -y) / length;
      uAlong[1] = (i === 0 ? y : x) / length;
      uSpike[0] = belowMag;
      uSpike[1] = vaneRad * frame.pxPerPlane;
      uSpike[2] = 1 / (1 + defocus * defocus);
      cross[i]!.draw(renderer);
    }
  };
};
