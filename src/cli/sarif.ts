/** Findings as SARIF 2.1.0 (OASIS standard, 2020), which code hosts and editors show beside the lines. */
import { pathToFileURL } from "node:url";
import type { Finding } from "#core/lesson/findings.ts";

type Rules = Readonly<Record<string, { readonly severity: string; readonly title: string; readonly hint: string }>>;

export function sarifOf(findings: readonly Finding[], absolute: (file: string) => string, rules: Rules): unknown {
  const ids = Object.keys(rules);
  return {
    $schema: "https://json.schemastore.org/sarif-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: {
          driver: {
            name: "faintward",
            rules: ids.map((id) => ({
              id,
              shortDescription: { text: rules[id]!.title },
              help: { text: rules[id]!.hint },
              defaultConfiguration: { level: rules[id]!.severity },
            })),
          },
        },
        columnKind: "utf16CodeUnits",
        results: findings.map(({ file, line, column, severity, code, message, hint }) => ({
          ruleId: code,
          ruleIndex: ids.indexOf(code),
          level: severity,
          message: { text: `${message}. ${hint}` },
          locations: [
            {
              physicalLocation: {
                artifactLocation: { uri: pathToFileURL(absolute(file)).href },
                region: { startLine: line, startColumn: column },
              },
            },
          ],
        })),
      },
    ],
  };
}
