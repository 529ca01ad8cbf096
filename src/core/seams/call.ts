/** The one way to ask a worker (or the same code inline) for something that takes time. */
export type CallHow = {
  readonly signal?: AbortSignal | undefined;
  /** As where stars are wanted: 0 (unless said) is most urgent, greater numbers wait. */
  readonly priority?: number | undefined;
  /** Buffers of the input that are handed over, not copied: to be thought of as gone, whoever answers. */
  readonly transfer?: readonly ArrayBuffer[] | undefined;
  readonly onProgress?: ((done: number, of: number) => void) | undefined;
};
export type Call = <In, Out>(method: string, input: In, how?: CallHow) => Promise<Out>;
