/** The sky worker. */
import { type Channel, serveCalls } from "./serveCalls.ts";
import { skyMethods } from "./skyMethods.ts";

serveCalls(globalThis as unknown as Channel, skyMethods);
