/** What a verb may touch of the machine, and how it answers. */

export interface Io {
  /** The project's folder: the sky's files are under it. */
  readonly root: string;
  /** Whether progress may be shown on standard error. */
  readonly isTerminal: boolean;
  readonly progress: (line: string) => void;
}

/** 0 answered, 1 the answer is "no"; unusable input is thrown as an InputError and becomes 2. */
export interface Answer {
  readonly exit: 0 | 1;
  /** The JSON document. */
  readonly json: unknown;
  /** The short table for people. */
  readonly text: string;
}

export interface Verb {
  /** One line for the list of verbs. */
  readonly what: string;
  /** How it is called. */
  readonly usage: string;
  readonly run: (args: readonly string[], io: Io) => Promise<Answer>;
}
