/** The one way to ask a worker (or the same code inline) for something that takes time. */
export type CallHow = {
  readonly signal?: AbortSignal | undefined;
  readonly priority?: number | undefined;
  readonly onProgress?: ((done: number, of: number) => void) | undefined;
};
export type Call = <In, Out>(method: string, input: In, how?: CallHow) => Promise<Out>;
