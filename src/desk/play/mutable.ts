/** A view or picture while it is filled, in place, before each frame. */
export type Mutable<T> = { -readonly [K in keyof T]: T[K] };
