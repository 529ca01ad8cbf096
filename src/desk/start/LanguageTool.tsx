/** The way to the other language, in that language's own word. It is spoken at once: nothing is left or lost. */
import { chosenLanguage } from "../app/state.ts";
import { say, translation } from "../words/say.ts";
import { RowIcon } from "./RowIcon.tsx";

export function LanguageTool() {
  const other = translation.value ? "en" : "de";
  const press = () => {
    chosenLanguage.value = other;
  };
  return (
    <button type="button" class="tool" lang={other} onClick={press}>
      <RowIcon name="language" />
      <span>{say("language.other")}</span>
    </button>
  );
}
