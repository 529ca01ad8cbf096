import { describe, expect, it } from "vitest";
import { crc32, fnv1a32, mixHash32 } from "#core/celestial/hash.ts";

const bytes = (text: string) => new TextEncoder().encode(text);

it("crc32 gives the check value of the CRC catalogue (ISO-HDLC)", () => {
  expect(crc32(bytes("123456789"))).toBe(0xcbf43926);
  expect(crc32([])).toBe(0);
});

it("fnv1a32 gives the published test values (Fowler, Noll & Vo; IETF draft-eastlake-fnv)", () => {
  expect(fnv1a32([])).toBe(0x811c9dc5);
  expect(fnv1a32(bytes("a"))).toBe(0xe40c292c);
  expect(fnv1a32(bytes("foobar"))).toBe(0xbf9cf968);
});

it("fnv1a32 goes on from an earlier hash", () => {
  expect(fnv1a32(bytes("bar"), fnv1a32(bytes("foo")))).toBe(fnv1a32(bytes("foobar")));
});

describe("mixHash32", () => {
  it("tells order, count and sign apart", () => {
    const all = [
      mixHash32(),
      mixHash32(0),
      mixHash32(0, 0),
      mixHash32(1, 2),
      mixHash32(2, 1),
      mixHash32(-1),
      mixHash32(1),
    ];
    expect(new Set(all).size).toBe(all.length);
  });

  it("flips each bit of the output about half the time when one bit of the input changes", () => {
    const flips = new Array<number>(32).fill(0);
    const trials = 4000;
    for (let i = 0; i < trials; i++) {
      const changed = mixHash32(7, i, 5) ^ mixHash32(7, i ^ (1 << (i % 20)), 5);
      for (let bit = 0; bit < 32; bit++) flips[bit]! += (changed >>> bit) & 1;
    }
    // Four standard deviations of 4000 coin throws: 126.
    for (const n of flips) expect(Math.abs(n - trials / 2)).toBeLessThan(127);
  });

  it("has no repeats over a small grid beyond what chance gives", () => {
    const seen = new Set<number>();
    for (let a = 0; a < 300; a++) for (let b = 0; b < 300; b++) seen.add(mixHash32(a, b));
    // 90,000 values in 2^32: 0.94 pairs expected.
    expect(seen.size).toBeGreaterThanOrEqual(90_000 - 6);
  });

  it("is unsigned and fixed for ever", () => {
    expect(mixHash32(1, 2, 3)).toBe(953157575);
  });
});
