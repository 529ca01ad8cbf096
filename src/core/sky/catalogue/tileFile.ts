/** The tile file from both sides. */
export { decodeTileFile, type TileFile } from "./decodeTileFile.ts";
export { encodeTileFile, type RawTile } from "./encodeTileFile.ts";
