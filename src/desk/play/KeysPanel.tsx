/** The table of keys, over the sheet's place; Escape closes it. */
import { useEffect, useRef } from "preact/hooks";
import { keysShown } from "../app/state.ts";
import { KEY_TABLE } from "../keys.ts";
import { say } from "../words/say.ts";
import { sayKeys } from "./keysWords.ts";

/** Takes the focus when it opens; whoever had it gets it back. */
export function KeysPanel() {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    heading.current?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <section class="side-panel keys-panel" aria-labelledby="keys-title">
      <h2 id="keys-title" tabIndex={-1} ref={heading}>
        {sayKeys("title")}
      </h2>
      <table>
        <tbody>
          {KEY_TABLE.map(({ act, shown }) => (
            <tr key={act}>
              <th scope="row">{shown}</th>
              <td>{sayKeys(act)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="aside">{say("play.caution")}</p>
      <button
        type="button"
        class="second-button"
        onClick={() => {
          keysShown.value = false;
        }}
      >
        {sayKeys("close")}
      </button>
    </section>
  );
}
