/** What the workers can do, as plain functions: the same run inline, in a worker, and in tests. */
import type { CallHow } from "#core/seams/index.ts";

/** What a method is given besides its input. */
export interface Running {
  /** Tells how far it is. */
  readonly progress: (done: number, of: number) => void;
  readonly signal: AbortSignal;
}
export type Method = (input: never, running: Running) => unknown;
export type Methods = Readonly<Record<string, Method>>;

/** Messages to a worker and back; `id` pairs them. */
export type Request =
  | { readonly id: number; readonly kind: "call"; readonly method: string; readonly input: unknown }
  | { readonly id: number; readonly kind: "cancel" };
export type Reply =
  | { readonly id: number; readonly kind: "result"; readonly value: unknown }
  | { readonly id: number; readonly kind: "error"; readonly error: PlainError }
  | { readonly id: number; readonly kind: "progress"; readonly done: number; readonly of: number };
/** An error as data: what survives the way between threads. */
export type PlainError = {
  readonly name: string;
  readonly message: string;
  readonly code: string;
  readonly hint: string;
};

export const NO_SUCH_METHOD = "NO_SUCH_METHOD";
export type { CallHow };
