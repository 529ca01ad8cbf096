import type { Call, CallHow } from "#core/seams/index.ts";
import { cancelled, errorOf } from "./errors.ts";
import { type Method, type Methods, NO_SUCH_METHOD } from "./methods.ts";

/** The method of a name, or an error that says which there are. */
export function methodOf(methods: Methods, name: string): Method {
  const method = Object.hasOwn(methods, name) ? methods[name] : undefined;
  if (method) return method;
  const known = Object.keys(methods).join(", ");
  throw errorOf({ name: "Error", message: `${NO_SUCH_METHOD}: ${name}; there are ${known}`, code: "", hint: "" });
}

/** Runs methods in this thread: for tests, and where there are no workers. */
export function createInlineCall(methods: Methods): Call {
  return async <In, Out>(name: string, input: In, { signal, onProgress }: CallHow = {}): Promise<Out> => {
    if (signal?.aborted) throw cancelled();
    const running = { progress: onProgress ?? (() => undefined), signal: signal ?? new AbortController().signal };
    const value = await methodOf(methods, name)(input as never, running);
    if (signal?.aborted) throw cancelled();
    return value as Out;
  };
}
