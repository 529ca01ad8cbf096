/** The sheet: what was read of a catalogue, and which rows are to be mended; before there is one, what a file holds. */

import { dateFormat } from "../words/say.ts";
import type { OwnCatalogue } from "./ownBase.ts";
import { count, say, shownName } from "./words.ts";

function Nothing() {
  return (
    <>
      <h2>{say("nothingTitle")}</h2>
      <p>{say("nothing1")}</p>
      <p>{say("nothing2")}</p>
      <p>{say("nothing3")}</p>
      <p>{say("nothing4")}</p>
      <pre class="own-sample">{"ra,dec,vmag,b-v\n279.234,38.784,0.03,0.00\n18:53:35.4,+33:01:45,8.80,"}</pre>
    </>
  );
}

function badWords({ badRows: { count: all, first } }: OwnCatalogue): string {
  if (all === 0) return say("badNone");
  if (all === 1) return say("badOne");
  return all === first.length
    ? say("badAll", { count: count(all) })
    : say("badFirst", { count: count(all), shown: first.length });
}

function BadRows({ own }: { own: OwnCatalogue }) {
  const { first, countedBy } = own.badRows;
  return (
    <section class="own-bad" aria-labelledby="own-bad-title">
      <h2 id="own-bad-title">{say("badTitle")}</h2>
      <p>{badWords(own)}</p>
      {first.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a list that scrolls is to be reached by key
        <ul tabIndex={0} aria-labelledby="own-bad-title">
          {first.map(({ line, what, hint }) => (
            <li key={line}>
              <span class="own-line">{say(countedBy === "row" ? "row" : "line", { line: count(line) })}</span>
              <span lang="en">{what}</span>
              <span class="own-hint" lang="en">
                {hint}
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const namesWords = ({ kept, of }: NonNullable<OwnCatalogue["names"]>) =>
  kept < of ? say("names", { kept: count(kept), of: count(of) }) : say("namesAll", { of: count(of) });

function Told({ own }: { own: OwnCatalogue }) {
  const date = dateFormat({ day: "numeric", month: "long", year: "numeric" }).format(own.takenAtMs);
  const left = own.dropped.reduce((sum, one) => sum + one.count, 0);
  const figures: readonly (readonly [string, number])[] = [
    [say("rows"), own.rows],
    [say("stars"), own.stars],
    [say("left"), left],
    ...own.dropped.map(({ why, count: many }) => [say("ofThem", { why }), many] as const),
  ];
  return (
    <>
      <h2>
        <bdi>{shownName(own.fileName)}</bdi>
      </h2>
      <p>{say("takenOn", { date })}</p>
      <table aria-label={say("sheet")}>
        <tbody>
          {figures.map(([words, figure], i) => (
            <tr key={words} class={i > 2 ? "own-reason" : undefined}>
              <th scope="row">{words}</th>
              <td>{count(figure)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {own.names && own.names.of > 0 && <p>{namesWords(own.names)}</p>}
      <BadRows own={own} />
    </>
  );
}

export function ReadSheet({ own }: { own: OwnCatalogue | null }) {
  return (
    <section class="own-sheet" aria-label={say("sheet")}>
      <div class="own-frame">{own ? <Told own={own} /> : <Nothing />}</div>
    </section>
  );
}
