/** What is on a page's heap. */
import type { Page } from "@playwright/test";

export interface Heap {
  used(): Promise<number>;
  /** Bytes in use after a forced collection. */
  afterCollecting(): Promise<number>;
}
export const heapOf = async (page: Page): Promise<Heap> => {
  const session = await page.context().newCDPSession(page);
  const used = async () => ((await session.send("Runtime.getHeapUsage")) as { usedSize: number }).usedSize;
  return {
    used,
    async afterCollecting() {
      for (let i = 0; i < 3; i++) await session.send("HeapProfiler.collectGarbage");
      return used();
    },
  };
};
