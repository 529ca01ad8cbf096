import type { Severity } from "#core/lesson/findings.ts";

/** An error is a full square on its point, a warning an open ring: told apart without colour. */
export function Sign({ severity }: { severity: Severity }) {
  return (
    <svg class="sign" viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      {severity === "error" ? <path d="M8 1.6 14.4 8 8 14.4 1.6 8z" /> : <circle cx="8" cy="8" r="5" />}
    </svg>
  );
}
