/** Brings the panels' signals up to date with the session: after events, at rest, four times a second. */

import { zenithDir } from "#core/celestial/frames.ts";
import { AVERAGE_BV } from "#core/celestial/magnitude.ts";
import { DEG, dirFromMas } from "#core/celestial/vector.ts";
import { stepNow } from "#core/lesson/steps.ts";
import { gearById } from "#core/optics/gear.ts";
import { PRICE } from "#core/score/rules.ts";
import type { Aid, Dir, Gear, Grade } from "#core/seams/index.ts";
import {
  claimRefusal,
  elapsedMs,
  gearInUse,
  horizonOf,
  orientationOf,
  pointing,
  skyTimeMs,
  tubeDir,
} from "#core/session/session.ts";
import { midSentence, say } from "../words/say.ts";
import { conditionsOf, heightWords, timeWords } from "./conditions.ts";
import { fieldInWords, starInWords } from "./fieldWords.ts";
import { countsPoints, type Hop, hasScrews, showsTrail } from "./hop.ts";
import { ladderStarsOf } from "./ladderStars.ts";
import { limitShares, sameShares } from "./limits.ts";
import type { AidOffer, HintRow } from "./model.ts";
import { NIGHT_STEP_MS } from "./night.ts";
import { altitudeDegOf, compassAxes, rimDegOf, setGear, setSky } from "./picture.ts";
import { legAt } from "./progress.ts";
import { wayList } from "./way.ts";

/** Grade 2 opens so long after grade 1 was taken. */
const HINT_WAIT_MS = 15_000;
/** How far a limit may be set by hand, and where the stars end. */
const LIMIT_REACH_MAG = 2;
const DEEPEST_MAG = 12.5;

const limitMagOf = ({ attempt }: Hop, gear: Gear): number =>
  (attempt.compiled.limits.find((limit) => limit.gear === gear.id)?.avertedMilliMag ??
    attempt.seeing.star(dirFromMas(attempt.compiled.spec.anchor), AVERAGE_BV, gear.id).avertedMilliMag) / 1000;

/** After a change of instrument. */
export function refreshGear(hop: Hop): void {
  const { signals, attempt, picture } = hop;
  const gear = gearInUse(attempt.session);
  const limitMag = limitMagOf(hop, gear);
  setGear(picture, gear, limitMag);
  signals.gear.value = gear;
  signals.limitMag.value = limitMag;
  const range = {
    least: limitMag - LIMIT_REACH_MAG,
    most: Math.max(limitMag, Math.min(DEEPEST_MAG, limitMag + LIMIT_REACH_MAG)),
  };
  signals.limitRange.value = attempt.compiled.spec.aids.limits === "free" ? range : null;
  signals.ladder.value = attempt.compiled.spec.gear.map((id) => {
    const one = gearById(id);
    return { gear: one, fieldDeg: one.kind === "eye" ? 180 : one.fieldDeg, inUse: id === gear.id };
  });
}

const aidOffer = ({ attempt: { compiled } }: Hop, aid: Aid & keyof typeof PRICE.aids, on: boolean): AidOffer => {
  const term = compiled.spec.aids[aid];
  return { offered: term !== "off", on, cost: term === "priced" ? PRICE.aids[aid] : 0 };
};

const aidIsOn = ({ attempt: { session, compiled } }: Hop, aid: Aid): boolean => {
  const last = session.events.findLast((event) => event.kind === "aid" && event.aid === aid);
  if (last?.kind === "aid") return last.on;
  return compiled.spec.aids[aid] === "free" && aid !== "carry";
};

export const compassIsOn = (hop: Hop): boolean => aidIsOn(hop, "compass");

/** The lesson's words; where they were generated, what it looks like is told from its rival too. */
function hintText({ lesson, tellApart }: Hop, leg: number, grade: Grade): string | null {
  const words = lesson.stages[0]?.hop.hints[leg]?.[grade - 1];
  const apart = grade === 2 && tellApart?.(leg);
  return words && apart ? `${words} ${apart}` : (words ?? null);
}

/** The three rows of hints for the leg in hand. */
function hintRows(hop: Hop): HintRow[] {
  const { session, compiled } = hop.attempt;
  if (compiled.spec.aids.hints === "off") return [];
  const leg = legAt(compiled, tubeDir(session));
  const taken = (grade: Grade) =>
    session.events.find((event) => event.kind === "hint" && event.leg === leg && event.grade === grade);
  return ([1, 2, 3] as const).map((grade) => {
    const before = grade === 1 ? null : taken((grade - 1) as Grade);
    const waited = before && elapsedMs(session) - before.tMs >= HINT_WAIT_MS;
    const used = taken(grade) !== undefined;
    const ready = session.state.phase === "hop" && (grade === 1 || waited);
    const price = grade === 3 ? null : compiled.spec.aids.hints === "priced" ? PRICE.hints[grade] : 0;
    return {
      grade,
      price,
      state: used ? "used" : ready ? "ready" : "later",
      text: used ? hintText(hop, leg, grade) : null,
    };
  });
}

function claimOffer(hop: Hop) {
  const { session } = hop.attempt;
  const why = claimRefusal(session);
  const { claimGear } = hop.attempt.compiled.spec;
  const { wrongClaims } = session.state;
  const wrongCost = countsPoints(hop) ? (PRICE.wrongClaims[wrongClaims] ?? 0) : 0;
  const words = hop.lookFrom
    ? null
    : why === "otherGear"
      ? say("hop.otherGear", { gear: midSentence(say(`gear.${gearById(claimGear).kind}`)) })
      : why === "restFirst"
        ? say("hop.restFirst")
        : why === "anchorFirst"
          ? say("hop.anchorFirst")
          : null;
  return { can: why === null, why: words, wrongCost, wrongClaims };
}

/** White on the sheet: only what the level allows. */
export function refreshSheet(hop: Hop): void {
  const { signals, attempt } = hop;
  const { session, compiled } = attempt;
  const gear = gearInUse(session);
  const hopping = session.state.phase !== "anchor";
  const live = showsTrail(hop) && gear.kind !== "eye";
  const lastPin = signals.pins.value.at(-1);
  const at: Dir = live ? pointing(session) : (lastPin?.at ?? dirFromMas(compiled.spec.anchor));
  const ringGear = gear.kind === "eye" || gear.kind === "sight" ? gearById(compiled.spec.hoppingGear) : gear;
  const showsRing = compiled.spec.aids.ring !== "off" && (hopping || live);
  signals.ring.value = showsRing ? { dir: at, fieldDeg: ringGear.fieldDeg } : null;
  signals.pointing.value = live ? at : null;
  if (!live || !hopping) return;
  const { raDas, decDas } = session.recorder;
  signals.trail.value = Array.from(raDas, (ra, i) => dirFromMas({ raMas: ra * 100, decMas: decDas[i]! * 100 }));
}

/** The lengths of a guided lesson, degrees. */
function lengthsOf(hop: Hop) {
  if (!showsTrail(hop) || hop.attempt.session.state.phase === "anchor") return null;
  let trailDas = 0;
  const { raDas, decDas, byHand } = hop.attempt.session.recorder;
  for (let i = 1; i < raDas.length; i++) {
    if (!byHand[i]) continue;
    const dRa = (raDas[i]! - raDas[i - 1]!) * Math.cos((decDas[i]! / 36_000) * DEG);
    trailDas += Math.hypot(dRa, decDas[i]! - decDas[i - 1]!);
  }
  return { trailDeg: trailDas / 36_000, wayDeg: hop.attempt.compiled.parDas / 36_000 };
}

/** Everything that is cheap, after events and at rest. */
export function refreshWords(hop: Hop): void {
  const { signals, attempt, lesson, facts, picture, field } = hop;
  const { session, compiled } = attempt;
  const altitudeDeg = altitudeDegOf(session);
  const steps = lesson.stages[0]?.hop.steps;
  if (steps) {
    const step = stepNow(steps, facts);
    if (signals.now.value.text !== step.say) signals.now.value = { headline: step.now, text: step.say };
  }
  signals.altitudeDeg.value = altitudeDeg;
  signals.conditions.value = conditionsOf(lesson, skyTimeMs(session), altitudeDeg);
  refreshNight(hop);
  refreshSky(hop);
  signals.seeking.value = session.state.phase === "anchor";
  signals.claim.value = claimOffer(hop);
  signals.hints.value = hintRows(hop);
  signals.home.value = { can: session.state.phase === "hop", cost: countsPoints(hop) ? PRICE.restart : 0 };
  signals.carry.value = carryOffer(hop);
  signals.asInInstrument.value = aidOffer(hop, "asInInstrument", aidIsOn(hop, "asInInstrument"));
  signals.lengths.value = lengthsOf(hop);
  refreshWay(hop);
  const gear = gearInUse(session);
  const height = midSentence(heightWords(altitudeDeg));
  const head =
    gear.kind === "eye"
      ? say("hop.fieldEye", { height })
      : say("hop.fieldGear", { gear: say(`gear.${gear.kind}`), image: midSentence(say(`gear.${gear.path}`)), height });
  // An eye tells the anchor by its figure; who hears the field is told the star. How it is found is not scored.
  const anchor = compiled.ways[0]!.marks[0]!;
  const told = session.state.phase === "anchor" ? ` ${starInWords(picture, anchor.name, dirFromMas(anchor.dir))}` : "";
  signals.fieldWords.value = `${head}${told} ${fieldInWords(picture, field.blocks)}`;
}

/** The rows are drawn anew where they changed. */
function refreshWay(hop: Hop): void {
  const { way } = hop.signals;
  const now = wayList(hop);
  if (JSON.stringify(now) !== JSON.stringify(way.value)) way.value = now;
}

/** How bright the sky lies before the eye, and what limits the view. */
function refreshSky({ signals, attempt: { session, night }, picture, eye }: Hop): void {
  const at = pointing(session);
  const gear = gearInUse(session);
  setSky(picture, gear, at, night);
  const shares = limitShares(night.costs(at, gear.id), eye?.lackMag(performance.now()) ?? 0);
  if (!sameShares(shares, signals.limits.value)) signals.limits.value = shares;
}

/** What may be done to the night and to the finder's screws. */
function refreshNight(hop: Hop): void {
  const { signals, attempt, night, steering, lesson } = hop;
  const { session, compiled } = attempt;
  const atMs = skyTimeMs(session);
  const before = signals.night.value;
  if (session.state.phase !== "anchor") signals.night.value = null;
  else if (before?.atMs !== atMs)
    signals.night.value = { ...night, atMs, stepMs: NIGHT_STEP_MS, words: timeWords(atMs, lesson.place.lonDeg) };
  signals.skyTurns.value = compiled.spec.drift ? !session.state.paused : null;
  steering.screws &&= hasScrews(hop);
  signals.screws.value = hasScrews(hop) ? steering.screws : null;
}

/** "Carry the stars" is offered only where it differs from the hand on the tube. */
function carryOffer(hop: Hop): AidOffer {
  const { parity, rotationRad } = orientationOf(hop.attempt.session);
  const differs = parity === -1 || Math.cos(rotationRad) > -0.99;
  const offer = aidOffer(hop, "carry", hop.steering.carry);
  return { ...offer, offered: offer.offered && differs && gearInUse(hop.attempt.session).kind !== "eye" };
}

/** The ladder's stars stand still while the tube moves: they follow at rest. */
export function refreshLadder(hop: Hop): void {
  const { signals, attempt, field } = hop;
  const { session } = attempt;
  const { parity, rotationRad } = orientationOf(session);
  const correct = parity === 1 && Math.abs(rotationRad) < 1e-6;
  signals.ladderStars.value = correct
    ? ladderStarsOf(field.blocks, pointing(session), zenithDir(horizonOf(session)), signals.limitMag.value)
    : [];
}

/** North and east on the rim, while the field moves. */
export function refreshCompass(hop: Hop): void {
  const { signals, attempt, picture } = hop;
  const gear = gearInUse(attempt.session);
  if (!compassIsOn(hop) || gear.kind === "eye" || gear.kind === "sight") {
    if (signals.compass.value) signals.compass.value = null;
    return;
  }
  const { north, east } = compassAxes(pointing(attempt.session));
  const northDeg = rimDegOf(picture.viewFromIcrs, north);
  const eastDeg = rimDegOf(picture.viewFromIcrs, east);
  const before = signals.compass.value;
  if (before && Math.abs(before.northDeg - northDeg) < 0.2 && Math.abs(before.eastDeg - eastDeg) < 0.2) return;
  signals.compass.value = { northDeg, eastDeg };
}
