import { describe, expect, it } from "vitest";
import type { FinishedAttempt, RunningAttempt } from "../../../src/desk/app/ports.ts";
import { createMemoryStore } from "../../../src/desk/store/memoryStore.ts";
import { openStore } from "../../../src/desk/store/openStore.ts";

const running = (id: string, savedAtMs: number): RunningAttempt => ({
  id,
  lessonId: "3-03",
  seed: 1,
  savedAtMs,
  recordText: `${id} at ${savedAtMs}`,
});
const finished = (id: string, points: number): FinishedAttempt => ({
  id,
  lessonId: "3-03",
  endedAtMs: points,
  word: "found",
  points,
  stars: 1,
  recordText: "",
});

describe("a store in memory", () => {
  it("gives back the running attempt that was saved last, until it is ended", async () => {
    const store = createMemoryStore();
    expect(await store.loadRunning()).toBeNull();
    await store.saveRunning(running("a", 10));
    await store.saveRunning(running("b", 20));
    await store.saveRunning(running("a", 30));
    expect((await store.loadRunning())?.recordText).toBe("a at 30");
    await store.clearRunning("a");
    expect((await store.loadRunning())?.id).toBe("b");
  });
  it("only adds finished attempts: the first of an id stays", async () => {
    const store = createMemoryStore();
    await store.addFinished(finished("a", 70));
    await store.addFinished(finished("a", 99));
    await store.addFinished(finished("b", 80));
    expect((await store.listFinished()).map(({ points }) => points)).toEqual([70, 80]);
  });
  it("keeps settings", async () => {
    const store = createMemoryStore();
    expect(await store.getSetting("lamp")).toBeUndefined();
    await store.setSetting("lamp", "red");
    expect(await store.getSetting("lamp")).toBe("red");
  });
});

it("where there is no data base at all, opening gives a store that says so and works", async () => {
  const store = await openStore("none here");
  expect(store.trouble).toBe("unavailable");
  await store.saveRunning(running("a", 1));
  expect((await store.loadRunning())?.id).toBe("a");
});
