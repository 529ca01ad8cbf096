/** Shader text goes over the network as it is written; indentation and lines of comment stay here. */
import type { Plugin } from "vite";

/** Without indentation. */
const level = (code: string): string => code.replace(/\n[ \t]+/g, "\n");
/** Without indentation and without lines that are a comment alone. */
export const packed = (code: string): string => level(code).replace(/\n\/\/[^\n]*/g, "");

const STAGE = /\/src\/stage\/\w+\.ts$/;
/** What the stage draws with; it makes text out of comments, which stay. */
const LIBRARY = /\/pixi\.js\/lib\/.*\.m?js$/;

/** Packs what draws: outside of shader text neither counts for anything. */
export const shaderText = (): Plugin => ({
  name: "faintward-shader-text",
  enforce: "pre",
  transform(code, id) {
    if (STAGE.test(id)) return { code: packed(code), map: null };
    return LIBRARY.test(id) ? { code: level(code), map: null } : null;
  },
});
