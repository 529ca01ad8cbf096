/** Plain names by which things are found, laid out so that a look-up need not pass over them all. */

export interface NameIndex<T> {
  /** Everything one name leads to, with how well it fits: lower is better. */
  find(wanted: string): Map<T, Fit>;
}
/** The very name; the same but for a raised number; a beginning; one slip of the fingers. */
export const FIT = { same: 0, unraised: 1, beginning: 2, slip: 3 } as const;
export type Fit = (typeof FIT)[keyof typeof FIT];

const SHORTEST_BEGINNING = 3;
/** Shorter words are too near to one another. */
const SHORTEST_SLIP = 5;

/** An index over things and their plain names (`plainName`). A slip is looked for only where nothing else fits. */
export function nameIndex<T>(
  entries: readonly { readonly thing: T; readonly keys: readonly string[] }[],
): NameIndex<T> {
  const byKey = new Map<string, T[]>();
  const byUnraised = new Map<string, T[]>();
  for (const { thing, keys } of entries) {
    for (const key of new Set(keys)) {
      put(byKey, key, thing);
      put(byUnraised, withoutRaised(key), thing);
    }
  }
  const sorted = [...byKey.keys()].sort();
  const backward = sorted.map(turned).sort();
  return {
    find(wanted) {
      const found = new Map<T, Fit>();
      const add = (things: readonly T[] | undefined, fit: Fit) => {
        for (const thing of things ?? []) if (!found.has(thing)) found.set(thing, fit);
      };
      add(byKey.get(wanted), FIT.same);
      add(byUnraised.get(wanted), FIT.unraised);
      add(byKey.get(withoutRaised(wanted)), FIT.unraised);
      for (const key of beginningWith(sorted, wanted)) add(byKey.get(key), FIT.beginning);
      if (found.size === 0 && wanted.length >= SHORTEST_SLIP) {
        for (const key of nearOnes(sorted, backward, wanted)) if (isOneSlip(wanted, key)) add(byKey.get(key), FIT.slip);
      }
      return found;
    },
  };
}

function put<T>(map: Map<string, T[]>, key: string, thing: T): void {
  const there = map.get(key);
  if (!there) map.set(key, [thing]);
  else there.push(thing);
}

/** "gamma2sgr" without its 2; names with digits elsewhere ("m27", "12aql") stay as they are. */
function withoutRaised(key: string): string {
  return key.replace(/^([a-z]{2,})\d([a-z]{3,})$/, "$1$2");
}

/** Names that go on with a letter, so that no number is cut short ("m10" begins no "m101") and "HIP" alone is no name. */
function beginningWith(sorted: readonly string[], wanted: string): string[] {
  const found: string[] = [];
  if (wanted.length < SHORTEST_BEGINNING) return found;
  for (let i = firstFrom(sorted, wanted); sorted[i]?.startsWith(wanted); i++) {
    const key = sorted[i]!;
    if (isLetter(key.charCodeAt(wanted.length))) found.push(key);
  }
  return found;
}

/**
 * Names that begin or end as the word does: one slip touches at most two letters side by side, so that it leaves the word's
 * beginning or its end whole where two letters lie between them.
 */
function nearOnes(sorted: readonly string[], backward: readonly string[], wanted: string): Set<string> {
  const whole = Math.floor((wanted.length - 2) / 2);
  const near = new Set<string>();
  const [beginning, end] = [wanted.slice(0, whole), turned(wanted).slice(0, whole)];
  for (let i = firstFrom(sorted, beginning); sorted[i]?.startsWith(beginning); i++) near.add(sorted[i]!);
  for (let i = firstFrom(backward, end); backward[i]?.startsWith(end); i++) near.add(turned(backward[i]!));
  return near;
}

const turned = (word: string) => [...word].reverse().join("");

function firstFrom(sorted: readonly string[], wanted: string): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

const isLetter = (code: number) => code >= 97 && code <= 122;

/**
 * One letter too many, too few, another, or two changed about. A digit is never a slip: "M 58" must not become "M 57".
 */
export function isOneSlip(typed: string, key: string): boolean {
  const longer = typed.length - key.length;
  if (longer > 1 || longer < -1) return false;
  let start = 0;
  while (start < key.length && typed.charCodeAt(start) === key.charCodeAt(start)) start++;
  let end = 0;
  const most = Math.min(typed.length, key.length) - start;
  while (end < most && typed.charCodeAt(typed.length - 1 - end) === key.charCodeAt(key.length - 1 - end)) end++;
  const wrong = typed.slice(start, typed.length - end);
  const right = key.slice(start, key.length - end);
  if (/\d/.test(wrong + right)) return false;
  if (wrong.length <= 1 && right.length <= 1) return wrong !== right;
  return wrong.length === 2 && right.length === 2 && wrong[0] === right[1] && wrong[1] === right[0];
}
