/** Numbers a corner of the Milky Way's triangles: direction, middle of its cell, and how much it brightens the night, dex. */
export const GLOW_FLOATS = 7;
