/** What is wrong with the text, and how to mend it; each line leads to its place. */
import type { Finding } from "#core/lesson/findings.ts";
import type { Verdict } from "./checker.ts";
import type { Draft } from "./draft.ts";
import { Sign } from "./Sign.tsx";
import { sayBench } from "./words.ts";

const count = (findings: readonly Finding[], severity: Finding["severity"]): number =>
  findings.filter((one) => one.severity === severity).length;

/** "3 errors, 1 warning". */
export function countWords(findings: readonly Finding[]): string {
  const [errorCount, warningCount] = [count(findings, "error"), count(findings, "warning")];
  const errors = errorCount === 1 ? sayBench("oneError") : sayBench("errors", { count: errorCount });
  const warnings = warningCount === 1 ? sayBench("oneWarning") : sayBench("warnings", { count: warningCount });
  if (errorCount === 0) return warnings;
  return warningCount === 0 ? errors : sayBench("both", { errors, warnings });
}

/** The verdict in one line and, where it needs one, a second. */
export function summaryOf(verdict: Verdict | null): { readonly title: string; readonly note: string | null } {
  if (!verdict) return { title: sayBench("checking"), note: null };
  if (verdict.kind === "tooLong") return { title: sayBench("tooLong"), note: sayBench("tooLongNote") };
  if (verdict.kind === "failed")
    return { title: sayBench("failed"), note: sayBench("failedNote", { why: verdict.why }) };
  const { findings, lesson } = verdict;
  const title = findings.length === 0 ? sayBench("none") : countWords(findings);
  return { title, note: lesson ? sayBench("noneNote") : sayBench("findingsNote") };
}

function Row({ finding, onGo }: { finding: Finding; onGo: (finding: Finding) => void }) {
  const { severity, line, column, message, hint, code } = finding;
  return (
    <li>
      <button type="button" class="finding" onClick={() => onGo(finding)}>
        <Sign severity={severity} />
        <span class="finding-head">
          <span>{sayBench(`${severity}`)}</span>
          <span aria-hidden="true">{sayBench("at", { line, column })}</span>
          <span class="hidden-words">{sayBench("atSaid", { line, column })}. </span>
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
      <h2>{sayBench("emptyTitle")}</h2>
      <p>{sayBench("empty1")}</p>
      <p>{sayBench("empty2")}</p>
      <p>{sayBench("empty3")}</p>
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
    <section class="verdict" aria-label={sayBench("findings")} aria-busy={verdict === null}>
      <div id="bench-summary" role="status">
        <h2>{title}</h2>
        {note && <p>{note}</p>}
      </div>
      <p class="try">
        <button type="button" class="main-button" disabled={!canTry} onClick={onTry}>
          {sayBench("tryIt")}
        </button>
        <span class="aside">{sayBench(shown && !canTry && verdict ? "tryLater" : "tryNote")}</span>
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
