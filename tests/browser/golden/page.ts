/** The figures of this browser, and its workers, with handles for the specs. */
import { createSkyCall, createThinkingCall } from "../../../src/desk/workers/createCalls.ts";
import { createInlineCall } from "../../../src/desk/workers/inlineCall.ts";
import { skyMethods } from "../../../src/desk/workers/skyMethods.ts";
import { thinkingMethods } from "../../../src/desk/workers/thinkingMethods.ts";
import { type Files, outcomeOf, workerCases } from "../../unit/desk/workerCases.ts";
import { goldenFigures, playedRecords, type Records } from "./figures.ts";

const fetched = async (path: string): Promise<Response> => {
  const response = await fetch(path);
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  return response;
};
const files: Files = {
  sky: async (name) => (await fetched(`sky/${name}`)).arrayBuffer(),
  lesson: async (name) => (await fetched(`lessons/${name}`)).text(),
};
const violations: string[] = [];
document.addEventListener("securitypolicyviolation", ({ violatedDirective }) => violations.push(violatedDirective));

const inline = { sky: createInlineCall(skyMethods), thinking: createInlineCall(thinkingMethods) };
const workers = { sky: createSkyCall(), thinking: createThinkingCall() };

const handles = {
  violations,
  records: (): Promise<Records> => playedRecords(files),
  figures: (records: Records): Promise<Record<string, number>> => goldenFigures(files, records),
  /** Every method: what it gave inline and in its worker. */
  async parity(): Promise<{ method: string; inline: string; worker: string }[]> {
    const answers: { method: string; inline: string; worker: string }[] = [];
    for (const one of await workerCases(files))
      answers.push({
        method: one.method,
        inline: await outcomeOf(inline[one.worker], one),
        worker: await outcomeOf(workers[one.worker].call, one),
      });
    return answers;
  },
  /** Calls that are cancelled at once, by name of what came of them; then one that is not. */
  async cancelled(): Promise<{ given: string[]; after: string }> {
    const cases = await workerCases(files);
    const given: string[] = [];
    for (const { worker, method, input } of cases) {
      const abort = new AbortController();
      const call = workers[worker].call(method, input, { signal: abort.signal });
      abort.abort();
      given.push(
        await call.then(
          () => "answered",
          ({ name }: Error) => name,
        ),
      );
    }
    return { given, after: await outcomeOf(workers.sky.call, cases[0]!) };
  },
  /** A worker that is ended answers no more. */
  async ended(): Promise<string> {
    const { call, end } = createThinkingCall();
    const given = call("checkLesson", { file: "a.yaml", text: "format: 1" }).then(
      () => "answered",
      () => "failed",
    );
    end();
    return Promise.race([given, new Promise<string>((resolve) => setTimeout(resolve, 400, "silent"))]);
  },
};
export type GoldenPage = typeof handles;
Object.assign(window, { goldenPage: handles });
