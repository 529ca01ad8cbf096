/** What is wrong with the text, and how to mend it; each line leads to its place. */
import type { Finding } from "#core/lesson/findings.ts";
import { say } from "../words/say.ts";
import type { Verdict } from "./checker.ts";
import type { Draft } from "./draft.ts";
import { Sign } from "./Sign.tsx";

const count = (findings: readonly Finding[], severity: Finding["severity"]): number =>
  findings.filter((one) => one.severity === severity).length;

/** "3 errors, 1 warning". */
export function countWords(findings: readonly Finding[]): string {
  const [errorCount, warningCount] = [count(findings, "error"), count(findings, "warning")];
  const errors = errorCount === 1 ? say("bench.oneError") : say("bench.errors", { count: errorCount });
  const warnings = warningCount === 1 ? say("bench.oneWarning") : say("bench.warnings", { count: warningCount });
  if (errorCount === 0) return warnings;
  return warningCount === 0 ? errors : say("bench.both", { errors, warnings });
}

/** The verdict in one line and, where it needs one, a second. */
export function summaryOf(verdict: Verdict | null): { readonly title: string; readonly note: string | null } {
  if (!verdict) return { title: say("bench.checking"), note: null };
  if (verdict.kind === "tooLong") return { title: say("bench.tooLong"), note: say("bench.tooLongNote") };
  if (verdict.kind === "failed")
    return { title: say("bench.failed"), note: say("bench.failedNote", { why: verdict.why }) };
  const { findings, lesson } = verdict;
  const title = findings.length === 0 ? say("bench.none") : countWords(findings);
  return { title, note: lesson ? say("bench.noneNote") : say("bench.findingsNote") };
}

function Row({ finding, onGo }: { finding: Finding; onGo: (finding: Finding) => void }) {
  const { severity, line, column, message, hint, code } = finding;
  return (
    <li>
      <button type="button" class="finding" onClick={() => onGo(finding)}>
        <Sign severity={severity} />
        <span class="finding-head">
          <span>{say(`bench.${severity}`)}</span>
          <span aria-hidden="true">{say("bench.at", { line, column })}</span>
          <span class="hidden-words">{say("bench.atSaid", { line, column })}. </span>
          <span class="finding-code">{code}</span>
        </span>
        <span class="finding-what" lang="en">
          {message}
        </span>
        <span class="finding-hint" lang="en">
          {hint}
        </span>
      </button>
    </li>
  );
}

/** The first words on an empty bench. */
function Empty() {
  return (
    <section class="bench-empty">
      <h2>{say("bench.emptyTitle")}</h2>
      <p>{say("bench.empty1")}</p>
      <p>{say("bench.empty2")}</p>
      <p>{say("bench.empty3")}</p>
    </section>
  );
}

interface Props {
  readonly draft: Draft;
  readonly onTry: () => void;
  readonly onGo: (finding: Finding) => void;
}
export function Verdicts({ draft, onTry, onGo }: Props) {
  const verdict = draft.verdict.value;
  const shown = draft.shown.value;
  if (draft.file.value.text.trim() === "") return <Empty />;
  const { title, note } = summaryOf(shown);
  const findings = shown?.kind === "checked" ? shown.findings : [];
  const canTry = verdict?.kind === "checked" && verdict.lesson !== null;
  return (
    <section class="verdict" aria-label={say("bench.findings")} aria-busy={verdict === null}>
      <div id="bench-summary" role="status">
        <h2>{title}</h2>
        {note && <p>{note}</p>}
      </div>
      <p class="try">
        <button type="button" class="main-button" disabled={!canTry} onClick={onTry}>
          {say("bench.tryIt")}
        </button>
        <span class="aside">{say(shown && !canTry && verdict ? "bench.tryLater" : "bench.tryNote")}</span>
      </p>
      {findings.length > 0 && (
        <ol class="findings">
          {findings.map((finding, i) => (
            <Row key={i} finding={finding} onGo={onGo} />
          ))}
        </ol>
      )}
    </section>
  );
}
