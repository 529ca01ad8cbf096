import type { Finding } from "#core/lesson/findings.ts";
import { oneLine } from "./oneLine.ts";

/** Findings as lines: place, severity, code and what is wrong, and below it how to mend it. */
export const textOf = (findings: readonly Finding[]): string =>
  findings
    .map(
      ({ file, line, column, severity, code, message, hint }) =>
        `${file}:${line}:${column} ${severity} ${code} ${oneLine(message)}\n  ${hint}`,
    )
    .join("\n");
