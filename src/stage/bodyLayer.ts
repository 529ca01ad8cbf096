/** Moon and planets as discs: they hide the stars behind them. Comes when first there is one in view. */
import type { WebGLRenderer } from "pixi.js";
import { BODIES, BODY_NUMBER } from "./bodyForms.ts";
import type { LookOf, ObjectLayer } from "./objectLayer.ts";
import type { FieldBody, FieldView } from "./view.ts";

/** From sunlight, B-V .65, a body's surface is so much redder or bluer; the eye takes the brightest for nearly white (set by eye). */
const TINT = `
vec3 tintOf(vec4 form) {
  float bv = form.w;
  return bv < .7 ? mix(vec3(.72, .88, 1.), vec3(1., .99, .96), clamp((bv - .35) / .35, 0., 1.))
    : mix(vec3(1., .99, .96), vec3(1., .76, .58), clamp((bv - .85) / .75, 0., 1.));
}
`;
/** A lit surface lies over the sky, whatever is dark of it is as bright as the sky before it. */
const FRAGMENT = `
in vec2 vAt;
flat in vec4 vForm;
flat in vec3 vLight;
void main() {
  vec4 body = bodyOf(vAt, vForm);
  float seen = through(distance(gl_FragCoord.xy, uField.xy));
  vec3 light = vLight / uRoom * body.rgb;
  outColour = vec4((uSky * body.a + light * (1. - uSky * body.a)) * seen, body.a * step(.004, seen));
}`;

const LOOK: LookOf<FieldBody> = {
  name: "bodies",
  tint: TINT,
  fragment: [BODIES, FRAGMENT],
  blend: "over",
  write(data, at, { look }) {
    const hasAxis = look.form === "banded" || look.form === "ringed";
    data[at] = BODY_NUMBER[look.form];
    data[at + 1] = hasAxis ? look.tilt : look.litShare;
    data[at + 2] = look.poleRad;
    data[at + 3] = look.colourBV;
  },
};

/** Given, so that what comes later takes nothing along. */
type LayerOf = (look: LookOf<FieldBody>) => ObjectLayer<FieldBody>;
type Draw = (
  renderer: WebGLRenderer,
  layer: ObjectLayer<FieldBody>,
  bodies: readonly FieldBody[],
  version: number,
) => void;
export type DrawBodies = (renderer: WebGLRenderer, bodies: NonNullable<FieldView["bodies"]>) => void;

/** Draws the bodies of a view. */
export const createBodies = (layerOf: LayerOf, draw: Draw): DrawBodies => {
  const layer = layerOf(LOOK);
  let drawn: readonly FieldBody[] | null = null;
  let version = 0;
  return (renderer, bodies) => {
    if (bodies !== drawn) version += 1;
    drawn = bodies;
    draw(renderer, layer, bodies, version);
  };
};
