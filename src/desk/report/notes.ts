/** The night's notes: a moment and a few words for each thing done, from the record. */
import { dirFromMas } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { type Price, pricesOf } from "#core/score/care.ts";
import { corridorOf, lengthsIn } from "#core/score/corridor.ts";
import { scoredPath } from "#core/score/path.ts";
import { distanceDas } from "#core/score/places.ts";
import { restsOf, sampleOfEvent } from "#core/score/rests.ts";
import type { AttemptEvent } from "#core/seams/index.ts";
import { fixed, markName, midSentence, say } from "../words/say.ts";
import type { Facts } from "./facts.ts";
import { sayReport } from "./words.ts";

export type Note = { readonly atMs: number; readonly text: string };

/** Rests so near to a mark of the way are rests on it; share of the hopping field. */
const ON_MARK_FIELDS = 0.2;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const gearNote = (id: string): string => {
  const { kind, magnification } = gearById(id);
  const gear = midSentence(say(`gear.${kind}`));
  if (kind === "eye") return sayReport("noteLookedUp");
  return kind === "eyepiece" ? sayReport("noteToPower", { gear, power: magnification }) : sayReport("noteTo", { gear });
};

const AIDS = { carry: "noteCarry", asInInstrument: "noteAsIn", compass: "noteCompass" } as const;

function pinNote({ record, dirs }: Facts, pin: AttemptEvent & { kind: "pin" | "pencil" }): string | null {
  const truth = dirs[sampleOfEvent(record, record.events.indexOf(pin))];
  if (!truth) return null;
  const fields = distanceDas(dirFromMas(pin.at), truth) / record.compiled.hoppingFieldDas;
  return sayReport(fields > 1 ? "notePinMany" : "notePin", { fields: fixed(fields, 1) });
}

function eventNote(event: AttemptEvent, facts: Facts, price: string): string | null {
  const { record, anchor } = facts;
  switch (event.kind) {
    case "use":
    case "eyepiece":
      return gearNote(event.gear);
    case "confirm":
      return event.tMs === record.trail.tMs[0] ? sayReport("noteAnchor", { anchor }) : null;
    case "pin":
      return pinNote(facts, event);
    case "hint":
      if (event.grade === 3) return sayReport("noteShown");
      return sayReport(event.grade === 1 ? "noteHint1" : "noteHint2", { price });
    case "aid":
      return event.on && event.aid in AIDS ? sayReport(AIDS[event.aid as keyof typeof AIDS], { price }) : null;
    case "restart":
      return sayReport("noteRestart", { anchor, price });
    case "knock":
      return sayReport("noteKnock");
    case "giveUp":
      return sayReport("noteGaveUp");
    default:
      return null;
  }
}

/** What a thing cost, to be said behind the words; nothing where nothing is counted. */
const pricePaid = (price: Price | undefined): string =>
  price && price.points > 0 ? sayReport("notePrice", { points: price.points }) : "";
const priceOf = (prices: readonly Price[], rule: Price["rule"] | undefined, atMs: number): string =>
  pricePaid(prices.find((price) => price.rule === rule && price.atMs === atMs));
const RULE_OF: Partial<Record<AttemptEvent["kind"], Price["rule"]>> = { hint: "hint", aid: "aid", restart: "restart" };

function claimNotes({ claims, target }: Facts, prices: readonly Price[]): Note[] {
  const paid = prices.filter(({ rule }) => rule === "wrongClaim");
  const wrong = claims.filter(({ right }) => !right);
  return claims.map((claim) => {
    const { atMs, right, says } = claim;
    if (!right) return { atMs, text: sayReport("noteWrong", { price: pricePaid(paid[wrong.indexOf(claim)]) }) };
    return { atMs, text: says === "here" ? sayReport("noteRight", { target }) : sayReport("noteNotSeen") };
  });
}

/** The first rest on each mark between anchor and target. */
function markNotes({ record, dirs, way }: Facts): Note[] {
  const nearDas = record.compiled.hoppingFieldDas * ON_MARK_FIELDS;
  const rests = restsOf(record);
  return way.marks.slice(1, -1).flatMap(({ dir, name: mark }) => {
    const place = dirFromMas(dir);
    const rest = rests.find(({ index }) => distanceDas(dirs[index]!, place) <= nearDas);
    return rest ? [{ atMs: rest.fromMs, text: sayReport("noteMark", { mark: markName(mark) }) }] : [];
  });
}

/** All notes, in the order of time. Words that only repeat the line before are left out. */
export function nightNotes(facts: Facts): Note[] {
  const { record, dirs, byClaims } = facts;
  const corridor = corridorOf(record.compiled);
  const prices = byClaims ? [] : pricesOf(record, dirs, corridor, lengthsIn(corridor, scoredPath(record)));
  const done = record.events.flatMap((event) => {
    const text = eventNote(event, facts, priceOf(prices, RULE_OF[event.kind], event.tMs));
    return text ? [{ atMs: event.tMs, text: capital(text) }] : [];
  });
  const all = [...done, ...markNotes(facts), ...claimNotes(facts, prices)].sort((a, b) => a.atMs - b.atMs);
  return all.filter(({ text }, i) => text !== all[i - 1]?.text);
}
