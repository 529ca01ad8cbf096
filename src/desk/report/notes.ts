/** The night's notes: a moment and a few words for each thing done, from the record. */
import { dirFromMas } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import { type Price, pricesOf } from "#core/score/care.ts";
import { corridorOf, lengthsIn } from "#core/score/corridor.ts";
import { scoredPath } from "#core/score/path.ts";
import { distanceDas } from "#core/score/places.ts";
import { restsOf, sampleAt } from "#core/score/rests.ts";
import type { AttemptEvent } from "#core/seams/index.ts";
import { say } from "../words/say.ts";
import type { Facts } from "./facts.ts";

export type Note = { readonly atMs: number; readonly text: string };

/** Rests so near to a mark of the way are rests on it; share of the hopping field. */
const ON_MARK_FIELDS = 0.2;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const gearNote = (id: string): string => {
  const { kind, magnification } = gearById(id);
  const gear = say(`gear.${kind}`).toLowerCase();
  if (kind === "eye") return say("report.noteLookedUp");
  return kind === "eyepiece"
    ? say("report.noteToPower", { gear, power: magnification })
    : say("report.noteTo", { gear });
};

const AIDS = { carry: "report.noteCarry", asInInstrument: "report.noteAsIn", compass: "report.noteCompass" } as const;

function pinNote({ record, dirs }: Facts, { at, tMs }: AttemptEvent & { kind: "pin" | "pencil" }): string | null {
  const truth = dirs[sampleAt(record, tMs)];
  if (!truth) return null;
  const fields = distanceDas(dirFromMas(at), truth) / record.compiled.hoppingFieldDas;
  return say(fields > 1 ? "report.notePinMany" : "report.notePin", { fields: fields.toFixed(1) });
}

function eventNote(event: AttemptEvent, facts: Facts, price: string): string | null {
  const { record, anchor } = facts;
  switch (event.kind) {
    case "use":
    case "eyepiece":
      return gearNote(event.gear);
    case "confirm":
      return event.tMs === record.trail.tMs[0] ? say("report.noteAnchor", { anchor }) : null;
    case "pin":
      return pinNote(facts, event);
    case "hint":
      if (event.grade === 3) return say("report.noteShown");
      return say(event.grade === 1 ? "report.noteHint1" : "report.noteHint2", { price });
    case "aid":
      return event.on && event.aid in AIDS ? say(AIDS[event.aid as keyof typeof AIDS], { price }) : null;
    case "restart":
      return say("report.noteRestart", { anchor, price });
    case "knock":
      return say("report.noteKnock");
    case "giveUp":
      return say("report.noteGaveUp");
    default:
      return null;
  }
}

/** What a thing cost, to be said behind the words; nothing where nothing is counted. */
const pricePaid = (price: Price | undefined): string =>
  price && price.points > 0 ? say("report.notePrice", { points: price.points }) : "";
const priceOf = (prices: readonly Price[], rule: Price["rule"] | undefined, atMs: number): string =>
  pricePaid(prices.find((price) => price.rule === rule && price.atMs === atMs));
const RULE_OF: Partial<Record<AttemptEvent["kind"], Price["rule"]>> = { hint: "hint", aid: "aid", restart: "restart" };

function claimNotes({ claims, target }: Facts, prices: readonly Price[]): Note[] {
  const paid = prices.filter(({ rule }) => rule === "wrongClaim");
  const wrong = claims.filter(({ right }) => !right);
  return claims.map((claim) => {
    const { atMs, right, says } = claim;
    if (!right) return { atMs, text: say("report.noteWrong", { price: pricePaid(paid[wrong.indexOf(claim)]) }) };
    return { atMs, text: says === "here" ? say("report.noteRight", { target }) : say("report.noteNotSeen") };
  });
}

/** The first rest on each mark between anchor and target. */
function markNotes({ record, dirs, way }: Facts): Note[] {
  const nearDas = record.compiled.hoppingFieldDas * ON_MARK_FIELDS;
  const rests = restsOf(record);
  return way.marks.slice(1, -1).flatMap(({ dir, name: mark }) => {
    const place = dirFromMas(dir);
    const rest = rests.find(({ index }) => distanceDas(dirs[index]!, place) <= nearDas);
    return rest ? [{ atMs: rest.fromMs, text: say("report.noteMark", { mark }) }] : [];
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
