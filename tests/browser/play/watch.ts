/** A page that is watched: no breach of the content policy, no request elsewhere, no error on the console. */
import { type BrowserContext, test as base, expect } from "@playwright/test";

/** What a page did that it must not. */
export type Faults = string[];

/** Notes faults of every page of a context from now on. */
export async function watch(context: BrowserContext, origin: string): Promise<Faults> {
  const faults: Faults = [];
  await context.exposeBinding("tellBreach", (_, breach: string) => {
    faults.push(`policy: ${breach}`);
  });
  await context.addInitScript(() => {
    const { tellBreach } = window as unknown as { tellBreach(breach: string): void };
    addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) => {
      tellBreach(`${violatedDirective} ${blockedURI}`);
    });
  });
  context.on("request", (request) => {
    const url = request.url();
    if (!/^(blob|data):/.test(url) && new URL(url).origin !== origin) faults.push(`request: ${url}`);
  });
  context.on("console", (message) => {
    if (message.type() === "error") faults.push(`console: ${message.text()}`);
  });
  context.on("weberror", (error) => {
    faults.push(`error: ${error.error().message}`);
  });
  return faults;
}

/** Every page of a test is watched; a fault fails the test at its end. */
export const test = base.extend<{ faults: Faults }>({
  faults: [
    async ({ context, baseURL }, use) => {
      const faults = await watch(context, new URL(baseURL ?? "").origin);
      await use(faults);
      expect(faults).toEqual([]);
    },
    { auto: true },
  ],
});
