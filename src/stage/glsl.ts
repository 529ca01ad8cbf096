/** Shader text that several layers share, and the one way to make a program of it. */
import { GlProgram } from "pixi.js";

/** Uniforms of `frame.ts`. Directions are row vectors: the matrices arrive row by row. */
export const FRAME = `
uniform mat3 uView;
uniform vec3 uField;
uniform vec2 uClip;
uniform vec2 uStop;
uniform vec4 uLook;
uniform vec4 uLamp;
uniform vec3 uRoom;
uniform vec3 uSky;
`;

/** The two projections of core/celestial/projection.ts; w <= 0 is off the map. */
export const PROJECT = `
vec3 viewOf(vec3 icrs) { return icrs * uView; }
float planeDivisor(vec3 v) { return uLook.z > .5 ? .5 * (1. + v.z) : v.z; }
vec2 windowOf(vec3 v) { return uField.xy + v.xy / planeDivisor(v) * uField.z; }
vec4 clipOf(vec2 window) { return vec4(window * uClip - 1., 0., 1.); }
const vec4 NOWHERE = vec4(3., 3., 0., 1.);
`;

/**
 * How much of an instrument's light is seen at a distance from the centre; `cover` is the table's share at the very stop.
 * With the open sky `uStop.x` is out of reach, and a mask is laid over at the end.
 */
export const THROUGH = `
float throughFor(float r, float cover) {
  return (1. - cover * clamp((r - uStop.x + uStop.y) / uStop.y, 0., 1.)) * step(r, uStop.x) * uLook.w;
}
float through(float r) { return throughFor(r, .95); }
`;

/** Tint of a light under the lamp in use: red or amber by its brightness alone. */
export const TONE = `
vec3 toneOf(vec3 tint) {
  float grey = dot(tint, vec3(.3, .5, .2));
  return uLamp.w > .5 ? uLamp.rgb * pow(grey, .8) : tint;
}
`;

/** @param parts - pieces above and the body, in order */
export const programOf = (name: string, vertex: readonly string[], fragment: readonly string[]): GlProgram =>
  GlProgram.from({
    name,
    vertex: `#version 300 es\nprecision highp float;\n${vertex.join("")}`,
    fragment: `#version 300 es\nprecision highp float;\nout vec4 outColour;\n${fragment.join("")}`,
  });
