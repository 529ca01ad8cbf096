/** The sum as a table: what, the figure behind it, whole points that add up to the score. */
import type { ComponentChildren } from "preact";
import type { ScoreLine } from "#core/seams/index.ts";
import { say } from "../words/say.ts";
import { Dots } from "./Dots.tsx";
import { degOf, type Facts } from "./facts.ts";

type Row = { readonly part: string; readonly figure: string; readonly points: ComponentChildren };

const signed = (points: number) => (points < 0 ? say("report.paid", { points: -points }) : String(points));

/** Points, and out of how many. */
const outOf = ({ points, figures }: ScoreLine): ComponentChildren => (
  <>
    {signed(points)} <span class="out-of">{say("report.outOf", { of: figures.of ?? 0 })}</span>
  </>
);

/** What was paid for, in words: "2 hints, 1 restart". */
function paidWords({ figures }: ScoreLine): string {
  const some = (count: number | undefined, one: string, many: string) => (count ? [count === 1 ? one : many] : []);
  const { wrongClaims, restarts, hints, aids } = figures;
  return [
    ...some(wrongClaims, say("report.wrongClaim"), say("report.wrongClaims", { count: wrongClaims ?? 0 })),
    ...some(restarts, say("report.restart"), say("report.restarts", { count: restarts ?? 0 })),
    ...some(hints, say("report.hint"), say("report.hints", { count: hints ?? 0 })),
    ...some(aids, say("report.aid"), say("report.aids", { count: aids ?? 0 })),
  ].join(", ");
}

const paidPoints = ({ figures }: ScoreLine): number =>
  ["wrongClaimsCost", "restartsCost", "hintsCost", "aidsCost"].reduce((sum, key) => sum + (figures[key] ?? 0), 0);

function rowOf(line: ScoreLine, { record, claims }: Facts): Row {
  const { figures, points } = line;
  switch (line.what) {
    case "found":
      return {
        part: say("report.lineFound"),
        figure: say("report.lineFoundAt", { count: claims.length }),
        points: <span class="out-of">{say("report.needed")}</span>,
      };
    case "directness": {
      const [par, trail] = [degOf(figures.parDas ?? 0), degOf(figures.trailDas ?? 0)];
      return {
        part: say("report.lineDirectness"),
        figure: say("report.directnessFigure", { par, trail }),
        points: outOf(line),
      };
    }
    case "pins": {
      const { answered = 0, asked = 0, offDas = 0 } = figures;
      const fields = (offDas / record.compiled.hoppingFieldDas).toFixed(1);
      const figure =
        answered > 0 ? say("report.pinsFigure", { answered, asked, fields }) : say("report.pinsNone", { asked });
      return { part: say("report.linePins"), figure, points: outOf(line) };
    }
    case "care": {
      const paid = paidPoints(line);
      const what = paidWords(line);
      return {
        part: what ? say("report.careOf", { what }) : say("report.lineCare"),
        figure: paid > 0 ? say("report.paid", { points: paid }) : say("report.careWhole"),
        points: outOf(line),
      };
    }
    case "floor":
      return { part: say("report.lineFloor"), figure: "", points: `+${points}` };
  }
}

function TableRow({ row, last = false }: { row: Row; last?: boolean }) {
  return (
    <tr class={last ? "together" : undefined}>
      <th scope="row">{row.part}</th>
      <td>{row.figure}</td>
      <td>{row.points}</td>
    </tr>
  );
}

/** Nothing where nothing was found: then there is no sum. */
export function Sum({ facts }: { facts: Facts }) {
  const { report, byClaims, claims, stars } = facts;
  if (report.word !== "found" && report.word !== "notSeen") return null;
  const claimsRow = { part: say("report.lineClaims"), figure: String(claims.length), points: <Dots stars={stars} /> };
  const lines = report.lines.filter(({ figures }) => figures.of !== 0);
  return (
    <table class="sum">
      <caption class="hidden-words">{say("report.sum")}</caption>
      <thead class="hidden-words">
        <tr>
          <th scope="col">{say("report.part")}</th>
          <th scope="col">{say("report.figure")}</th>
          <th scope="col">{say("report.points")}</th>
        </tr>
      </thead>
      <tbody>
        {byClaims ? (
          <TableRow row={claimsRow} />
        ) : (
          <>
            {lines.map((line) => (
              <TableRow key={line.what} row={rowOf(line, facts)} />
            ))}
            <TableRow last row={{ part: say("report.together"), figure: "", points: String(report.points) }} />
          </>
        )}
      </tbody>
    </table>
  );
}
