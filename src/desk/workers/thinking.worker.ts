/** The thinking worker. */
import { type Channel, serveCalls } from "./serveCalls.ts";
import { thinkingMethods } from "./thinkingMethods.ts";

serveCalls(globalThis as unknown as Channel, thinkingMethods);
