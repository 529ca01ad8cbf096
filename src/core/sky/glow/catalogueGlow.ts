/** The glow of the catalogue sky, from its table: loaded apart from the rest, for it is needed late. */
import table from "#shared/glow.json";
import { GALACTIC_POLE, type GlowMuAt, glowBeyond, glowOfMap, poleMu } from "./glowMap.ts";

const SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/** Base64 without padding inside (RFC 4648, section 4), as neither page nor core has one decoder for both. */
function bytesOf(text: string): Uint8Array {
  const signs = text.replaceAll("=", "");
  const bytes = new Uint8Array(Math.floor((signs.length * 3) / 4));
  let bits = 0;
  let held = 0;
  let at = 0;
  for (const sign of signs) {
    bits = ((bits << 6) | SIGNS.indexOf(sign)) & 0xffff;
    held += 6;
    if (held < 8) continue;
    held -= 8;
    bytes[at++] = (bits >> held) & 255;
  }
  return bytes;
}

let own: GlowMuAt | undefined;
let beyond: GlowMuAt | undefined;

/** Light of the stars fainter than V 6.5, mag/arcsec2. */
export function catalogueGlow(): GlowMuAt {
  own ??= glowOfMap(bytesOf(table.map));
  return own;
}

/** What that adds to a night, whose own measure holds the light of the poles. */
export function catalogueGlowBeyond(): GlowMuAt {
  beyond ??= glowBeyond(catalogueGlow(), poleMu(catalogueGlow(), GALACTIC_POLE));
  return beyond;
}
