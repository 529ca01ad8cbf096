/** The sum as a table: what, the figure behind it, whole points that add up to the score. */
import type { ComponentChildren } from "preact";
import type { ScoreLine } from "#core/seams/index.ts";
import { fixed } from "../words/say.ts";
import { Dots } from "./Dots.tsx";
import { degOf, type Facts } from "./facts.ts";
import { sayReport } from "./words.ts";

type Row = { readonly part: string; readonly figure: string; readonly points: ComponentChildren };

const signed = (points: number) => (points < 0 ? sayReport("paid", { points: -points }) : String(points));

/** Points, and out of how many. */
const outOf = ({ points, figures }: ScoreLine): ComponentChildren => (
  <>
    {signed(points)} <span class="out-of">{sayReport("outOf", { of: figures.of ?? 0 })}</span>
  </>
);

/** What was paid for, in words: "2 hints, 1 restart". */
function paidWords({ figures }: ScoreLine): string {
  const some = (count: number | undefined, one: string, many: string) => (count ? [count === 1 ? one : many] : []);
  const { wrongClaims, restarts, hints, aids } = figures;
  return [
    ...some(wrongClaims, sayReport("wrongClaim"), sayReport("wrongClaims", { count: wrongClaims ?? 0 })),
    ...some(restarts, sayReport("restart"), sayReport("restarts", { count: restarts ?? 0 })),
    ...some(hints, sayReport("hint"), sayReport("hints", { count: hints ?? 0 })),
    ...some(aids, sayReport("aid"), sayReport("aids", { count: aids ?? 0 })),
  ].join(", ");
}

const paidPoints = ({ figures }: ScoreLine): number =>
  ["wrongClaimsCost", "restartsCost", "hintsCost", "aidsCost"].reduce((sum, key) => sum + (figures[key] ?? 0), 0);

function rowOf(line: ScoreLine, { record, claims }: Facts): Row {
  const { figures, points } = line;
  switch (line.what) {
    case "found":
      return {
        part: sayReport("lineFound"),
        figure: sayReport("lineFoundAt", { count: claims.length }),
        points: <span class="out-of">{sayReport("needed")}</span>,
      };
    case "directness": {
      const [par, trail] = [degOf(figures.parDas ?? 0), degOf(figures.trailDas ?? 0)];
      return {
        part: sayReport("lineDirectness"),
        figure: sayReport("directnessFigure", { par, trail }),
        points: outOf(line),
      };
    }
    case "pins": {
      const { answered = 0, asked = 0, offDas = 0 } = figures;
      const fields = fixed(offDas / record.compiled.hoppingFieldDas, 1);
      const figure =
        answered > 0 ? sayReport("pinsFigure", { answered, asked, fields }) : sayReport("pinsNone", { asked });
      return { part: sayReport("linePins"), figure, points: outOf(line) };
    }
    case "care": {
      const paid = paidPoints(line);
      const what = paidWords(line);
      return {
        part: what ? sayReport("careOf", { what }) : sayReport("lineCare"),
        figure: paid > 0 ? sayReport("paid", { points: paid }) : sayReport("careWhole"),
        points: outOf(line),
      };
    }
    case "floor":
      return { part: sayReport("lineFloor"), figure: "", points: `+${points}` };
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
  const claimsRow = { part: sayReport("lineClaims"), figure: String(claims.length), points: <Dots stars={stars} /> };
  const lines = report.lines.filter(({ figures }) => figures.of !== 0);
  return (
    <table class="sum">
      <caption class="hidden-words">{sayReport("sum")}</caption>
      <thead class="hidden-words">
        <tr>
          <th scope="col">{sayReport("part")}</th>
          <th scope="col">{sayReport("figure")}</th>
          <th scope="col">{sayReport("points")}</th>
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
            <TableRow last row={{ part: sayReport("together"), figure: "", points: String(report.points) }} />
          </>
        )}
      </tbody>
    </table>
  );
}
