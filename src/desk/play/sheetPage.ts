/** Which page lies on the table, and what is printed on it. */
import { hopPage, pageCone, printPage, widePage } from "#core/chart/hopPages.ts";
import { gearInUse } from "#core/session/session.ts";
import { say } from "../words/say.ts";
import type { Hop } from "./hop.ts";
import { settle } from "./outcomes.ts";

/** A wide page for eye and sight, to find the anchor on; the hop's own page for the rest. */
export async function chooseSheet(hop: Hop): Promise<void> {
  const { attempt, lesson, loading, signals, sky } = hop;
  const { compiled, session } = attempt;
  const { kind } = gearInUse(session);
  const wide = (kind === "eye" || kind === "sight") && lesson.gear.use.length > 2;
  const pageOf = wide ? widePage : hopPage;
  const asked = pageOf(compiled, []);
  const cone = pageCone(asked);
  const [stars, borders] = await Promise.all([loading.whole(cone, asked.limitMag), sky.bordersWithin(cone)]);
  const page = pageOf(compiled, stars.blocks);
  signals.marks.value = printPage(page, compiled, { ...sky, borders }, stars.blocks, {
    words: { anchor: hop.lookFrom ? compiled.ways[0]!.marks[0]!.name : say("hop.anchor"), target: say("hop.target") },
    bare: hop.lookFrom !== undefined,
    ways: lesson.level === "G" || !session.state.scored,
  });
  signals.page.value = page;
  settle(hop);
}
