/** Checks of what is said: length of sentences, the course's voice, values in braces. */
import { type Finding, finding } from "./findings.ts";
import type { Path, Places } from "./locate.ts";
import { nearestWord } from "./nearestWord.ts";
import type { Lesson } from "./types.ts";
import { PLACEHOLDERS, placeholdersOf, sentencesOf, wordCount } from "./words.ts";

const LONGEST_SENTENCE_WORDS = 22;
/** Words that belittle what the learner finds hard. */
const BELITTLING = /\b(simply|just|obviously|of course|clearly)\b/i;

type Said = { readonly path: Path; readonly text: string };

/** Every text that a learner gets to read, with its path. */
function textsOf(lesson: Lesson): Said[] {
  const said: Said[] = lesson.briefing.map((text, i) => ({ path: ["briefing", i], text }));
  lesson.stages.forEach(({ hop }, s) => {
    const at = (...path: PropertyKey[]): Path => ["stages", s, "hop", ...path];
    hop.steps.forEach(({ now, say }, i) => {
      said.push({ path: at("steps", i, "now"), text: now }, { path: at("steps", i, "say"), text: say });
    });
    hop.hints.forEach((grades, leg) => {
      grades.forEach((text, grade) => {
        said.push({ path: at("hints", leg, grade), text });
      });
    });
    const { codes, ...after } = hop.after;
    for (const [key, text] of Object.entries(after)) said.push({ path: at("after", key), text });
    for (const [code, text] of Object.entries(codes)) said.push({ path: at("after", "codes", code), text });
  });
  lesson.afterwards.forEach((text, i) => {
    said.push({ path: ["afterwards", i], text });
  });
  return said;
}

export function checkWords(file: string, lesson: Lesson, places: Places): Finding[] {
  const findings: Finding[] = [];
  for (const { path, text } of textsOf(lesson)) {
    const at = places.value(path);
    for (const sentence of sentencesOf(text)) {
      const words = wordCount(sentence);
      if (words > LONGEST_SENTENCE_WORDS)
        findings.push(finding(file, "FW034", at, `a sentence of ${words} words: "${sentence.slice(0, 40)}..."`));
    }
    const slip = text.includes("!") ? "!" : BELITTLING.exec(text)?.[0];
    if (slip) findings.push(finding(file, "FW041", at, `"${slip}" is not said here`));
    for (const name of placeholdersOf(text)) {
      if ((PLACEHOLDERS as readonly string[]).includes(name)) continue;
      const near = nearestWord(name, PLACEHOLDERS);
      findings.push(
        finding(
          file,
          "FW040",
          at,
          `nothing fills {${name}}; there are ${PLACEHOLDERS.join(", ")}`,
          near && `Did you mean {${near}}?`,
        ),
      );
    }
  }
  return findings;
}
