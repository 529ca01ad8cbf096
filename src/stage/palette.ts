/** Colours of barrel, sky and ground as display values, in the light in use. All functions write into `out`. */
import { greenShare } from "./screenLight.ts";
import type { FieldView, Rgb } from "./view.ts";

/** Three display values, written in place. */
export type RgbOut = { [index: number]: number };
const hex = (code: number): Rgb => [((code >> 16) & 255) / 255, ((code >> 8) & 255) / 255, (code & 255) / 255];
/** A colour of the normal light and what its red channel is under the red lamp, which has no other. */
export type Token = { readonly normal: Rgb; readonly red: number };
const token = (normal: number, red: number): Token => ({ normal: hex(normal), red: red / 255 });
export const TABLE = token(0x0b0c0d, 0x08);
export const RIM_LIT = token(0x1d2023, 0x1c);
export const RIM_MID = token(0x161719, 0x14);
export const RIM_EDGE = token(0x121314, 0x10);
export const HAIR = token(0x3b3d40, 0x3a);
export const HAND = token(0xffffff, 0xaa);
/** The light of the reflex sight's rings. */
export const RING_LIGHT = token(0xd9614a, 0x62);
/** Tone of nebulae and galaxies. */
export const MIST: Rgb = hex(0xd6e2e6);
/** The red tokens are written for this level of the lamp. */
const TOKEN_LEVEL = 170 / 255;

/** A token in the light of the view. */
export const tokenColour = (one: Token, view: FieldView, out: RgbOut): void => {
  const lit = view.lamp === "normal";
  const red = (one.red * view.lampLevel) / TOKEN_LEVEL;
  out[0] = lit ? one.normal[0] : red;
  out[1] = lit ? one.normal[1] : red * greenShare(view.lamp);
  out[2] = lit ? one.normal[2] : 0;
};

/**
 * A lit surface (sky, ground) in the light of the view: under a lamp its brightness carries over in proportion, so that
 * stars keep their contrast against the sky; the tint of a light alone is lifted by the power .8 in the shaders.
 */
export const surfaceColour = (red: number, green: number, blue: number, view: FieldView, out: RgbOut): void => {
  const lit = view.lamp === "normal";
  const level = (0.3 * red + 0.5 * green + 0.2 * blue) * view.lampLevel;
  out[0] = lit ? red : level;
  out[1] = lit ? green : level * greenShare(view.lamp);
  out[2] = lit ? blue : 0;
};
