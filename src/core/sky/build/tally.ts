/** Counts by reason, in the order in which the reasons first came up. */
export type Tally = {
  readonly add: (why: string, count?: number) => void;
  readonly list: () => { why: string; count: number }[];
};

export function createTally(): Tally {
  const counts = new Map<string, number>();
  return {
    add: (why, count = 1) => counts.set(why, (counts.get(why) ?? 0) + count),
    list: () => [...counts].map(([why, count]) => ({ why, count })),
  };
}
