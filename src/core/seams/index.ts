export type * from "./attempt.ts";
export type * from "./call.ts";
export type * from "./gear.ts";
export type * from "./record.ts";
export type * from "./sky.ts";
