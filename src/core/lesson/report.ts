import type { FindingCode } from "./findings.ts";
import type { Path } from "./locate.ts";

/** Tells one finding at a place of the lesson; `hint` only where it says more than the code's own. */
export type Report = (code: FindingCode, path: Path, message: string, hint?: string) => void;
