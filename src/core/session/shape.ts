/**
 * Checks of values from outside, as small functions: each takes what JSON.parse gave and gives back a fresh, typed value or
 * throws an InputError that names the place. Unknown keys are left out.
 */
import { InputError } from "#core/seams/errors.ts";

export type Check<T> = (value: unknown, where: string) => T;

const HINT = "The record is damaged, or another version wrote it.";

export function refuse(where: string, what: string): never {
  throw new InputError(`${where} ${what}`, HINT);
}

/** A whole number within bounds. */
export function int(low: number, high: number): Check<number> {
  return (value, where) => {
    if (!Number.isInteger(value) || (value as number) < low || (value as number) > high) {
      refuse(where, `is no whole number from ${low} to ${high}`);
    }
    return value as number;
  };
}

export function text(longest: number): Check<string> {
  return (value, where) => {
    if (typeof value !== "string" || value.length > longest)
      refuse(where, `is no text of at most ${longest} characters`);
    return value as string;
  };
}

export const bool: Check<boolean> = (value, where) => {
  if (typeof value !== "boolean") refuse(where, "is neither true nor false");
  return value as boolean;
};

/** One of the given strings or numbers. */
export function oneOf<const T extends string | number>(choices: readonly T[]): Check<T> {
  return (value, where) => {
    if (!choices.includes(value as T)) refuse(where, `is none of ${choices.join(", ")}`);
    return value as T;
  };
}

export function list<T>(item: Check<T>, longest: number, least = 0): Check<T[]> {
  return (value, where) => {
    if (!Array.isArray(value) || value.length > longest) return refuse(where, `is no list of at most ${longest}`);
    if (value.length < least) refuse(where, `has fewer than ${least}`);
    return value.map((each, i) => item(each, `${where}[${i}]`));
  };
}

export function pair<T>(item: Check<T>): Check<[T, T]> {
  return (value, where) => {
    if (!Array.isArray(value) || value.length !== 2) return refuse(where, "is no pair");
    return [item(value[0], `${where}[0]`), item(value[1], `${where}[1]`)];
  };
}

/** A key that may be missing: the value is then undefined and the key left out. */
export function maybe<T>(item: Check<T>): Check<T | undefined> {
  return (value, where) => (value === undefined ? undefined : item(value, where));
}

export function orNull<T>(item: Check<T>): Check<T | null> {
  return (value, where) => (value === null ? null : item(value, where));
}

type Fields<T> = { readonly [K in keyof T]-?: Check<T[K]> };

export function object<T extends object>(fields: Fields<T>): Check<T> {
  const checks = Object.entries(fields) as [string, Check<unknown>][];
  return (value, where) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return refuse(where, "is no object");
    const out: Record<string, unknown> = {};
    for (const [key, check] of checks) {
      const given = Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
      const checked = check(given, `${where}.${key}`);
      if (checked !== undefined) out[key] = checked;
    }
    return out as T;
  };
}
