/** Base64 (RFC 4648, section 4) as a stream: letters come in pieces cut anywhere, blanks and line ends are passed over. */
import { InputError } from "#core/seams/errors.ts";

const LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
const [BLANK, PAD, NONE] = [64, 65, 66];
const VALUES = new Uint8Array(128).fill(NONE);
for (let i = 0; i < LETTERS.length; i++) VALUES[LETTERS.charCodeAt(i)] = i;
for (const blank of " \t\r\n") VALUES[blank.charCodeAt(0)] = BLANK;
VALUES["=".charCodeAt(0)] = PAD;

const HINT = "Export the table again as a VOTable.";

export type Base64Stream = {
  /** The bytes that the letters so far complete. Throws InputError at a letter that is none of base64. */
  readonly push: (text: string) => Uint8Array<ArrayBuffer>;
  /** Throws InputError where the letters end within a byte. */
  readonly finish: () => void;
};

export function readBase64(): Base64Stream {
  let bits = 0;
  let count = 0;
  let letters = 0;
  let pads = 0;
  return {
    push(text) {
      const bytes = new Uint8Array(Math.ceil((text.length * 3) / 4) + 1);
      let length = 0;
      for (let i = 0; i < text.length; i++) {
        const value = VALUES[text.charCodeAt(i)] ?? NONE;
        if (value === BLANK) continue;
        if (value === PAD) {
          pads += 1;
          continue;
        }
        if (value === NONE || pads > 0) throw new InputError("The table's bytes are no base64", HINT);
        letters += 1;
        bits = ((bits << 6) | value) & 0xffffff;
        count += 6;
        if (count < 8) continue;
        count -= 8;
        bytes[length++] = (bits >> count) & 0xff;
      }
      return bytes.slice(0, length);
    },
    finish() {
      const isWhole = letters % 4 === 0 ? pads === 0 : letters % 4 > 1 && (letters + pads) % 4 === 0 && pads < 3;
      if (!isWhole) throw new InputError("The table's bytes end in the middle of a group of base64", HINT);
    },
  };
}
