/** What follows from events and steps: words, sounds, moments. The session decides; the page acts. */
import { DAS_RAD, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { projectionOf } from "#core/chart/page.ts";
import { fillLine } from "#core/lesson/words.ts";
import { gearById } from "#core/optics/gear.ts";
import { PIN, PRICE } from "#core/score/rules.ts";
import type { Dir } from "#core/seams/index.ts";
import { gearInUse, type Outcome, pointing, type Refusal, tubeDir } from "#core/session/session.ts";
import { fixed, midSentence, say } from "../words/say.ts";
import { layAsInInstrument, refreshAgreement, showProof } from "./agreeing.ts";
import { countsPoints, type Hop, isGuided } from "./hop.ts";
import { refreshGear, refreshLadder, refreshSheet, refreshWords } from "./refresh.ts";

const tell = (hop: Hop, words: string) => {
  hop.signals.notice.value = words;
};

const refusalWords = (hop: Hop, why: Refusal): string | null => {
  switch (why) {
    case "restFirst":
      return say("hop.restFirst");
    case "pinFirst":
      return say("hop.pinFirst");
    case "anchorFirst":
      return say("hop.anchorFirst");
    case "useTheSight":
      return say("hop.useTheSight");
    case "notInTheHop":
      return say("hop.timeIsSet");
    case "otherGear": {
      const { claimGear } = hop.attempt.compiled.spec;
      return say("hop.otherGear", { gear: midSentence(say(`gear.${gearById(claimGear).kind}`)) });
    }
    default:
      return null;
  }
};

/** The tube points off the printed page. */
function isOffPage({ signals, attempt }: Hop): boolean {
  const page = signals.page.value;
  const point = { x: 0, y: 0 };
  if (!page) return false;
  const projection = projectionOf(page);
  return !projection.project(tubeDir(attempt.session), point) || !projection.holds(point);
}

function onClaimed(hop: Hop, outcome: Outcome & { kind: "claimed" }): void {
  const { signals, ports, lesson } = hop;
  ports.sound.play("tick");
  if (outcome.verdict === "right") {
    ports.sound.play("right");
    hop.motion.rightMs = performance.now();
    tell(hop, say("hop.rightClaim"));
    signals.phase.value = "ended";
    return;
  }
  const cost = PRICE.wrongClaims[outcome.wrongClaims - 1] ?? 0;
  const after = lesson.stages[0]?.hop.after;
  const meant = outcome.says === "here" ? after?.wrong : say("hop.notSeenWrong");
  const words = (isOffPage(hop) ? after?.outside : meant) ?? say("hop.wrongClaimFree");
  const line = fillLine(words, { anchor: anchorName(hop) }) ?? say("hop.wrongClaimFree");
  tell(hop, countsPoints(hop) ? `${line} ${say("hop.wrongCost", { points: cost })}` : line);
}

function onRest(hop: Hop): void {
  const { attempt, facts, progress } = hop;
  const { session } = attempt;
  const gear = gearInUse(session);
  if (gear.kind === "eye" || session.state.phase !== "hop") return;
  if (!isGuided(hop)) return;
  const before = facts.marksReached;
  Object.assign(facts, progress.rest(tubeDir(session)));
  if (facts.marksReached > before) hop.ports.sound.play("waymark");
}

/** The anchor comes near: told on guided levels while it is sought. */
function seekAnchor(hop: Hop): void {
  const { session, compiled } = hop.attempt;
  if (session.state.phase !== "anchor" || !isGuided(hop)) return;
  const gear = gearInUse(session);
  const nearRad = Math.min(0.3 * gear.fieldDeg, 8) * (Math.PI / 180);
  hop.facts.anchorNear = separationRad(pointing(session), dirFromMas(compiled.spec.anchor)) < nearRad;
}

/** Carries out what a session said. */
export function actOn(hop: Hop, outcomes: readonly Outcome[]): void {
  if (outcomes.length === 0) return;
  const { signals, ports, facts, lesson } = hop;
  for (const outcome of outcomes) {
    switch (outcome.kind) {
      case "anchorConfirmed":
        facts.anchorConfirmed = true;
        ports.sound.play("waymark");
        tell(hop, say("hop.anchorConfirmed", { anchor: anchorName(hop) }));
        break;
      case "notYet":
        tell(
          hop,
          say(
            outcome.howFar === "inField"
              ? "hop.notYetInField"
              : outcome.howFar === "near"
                ? "hop.notYetNear"
                : "hop.notYetFar",
          ),
        );
        break;
      case "rest":
        seekAnchor(hop);
        onRest(hop);
        break;
      case "pinAsked":
        signals.asksPin.value = true;
        signals.sheetMode.value = "pin";
        tell(hop, say("hop.pinAsked"));
        break;
      case "restarted":
        Object.assign(facts, hop.progress.restarted());
        tell(hop, say("hop.restarted", { anchor: anchorName(hop) }));
        break;
      case "claimed":
        onClaimed(hop, outcome);
        break;
      case "shown":
        tell(hop, say("hop.shown"));
        break;
      case "sunStop":
        tell(hop, say("hop.sunStop"));
        break;
      case "hintGiven": {
        ports.sound.play("pencil");
        const price = outcome.grade === 3 ? 0 : PRICE.hints[outcome.grade];
        if (price > 0 && lesson.aids.hints === "priced") tell(hop, say("hop.hintCost", { points: price }));
        break;
      }
      case "refused": {
        const words = refusalWords(hop, outcome.why);
        if (words) tell(hop, words);
        break;
      }
      case "ended":
        signals.phase.value = "ended";
        hop.ended();
        break;
    }
  }
  settle(hop);
}

export function anchorName({ attempt }: Hop): string {
  return attempt.compiled.ways[0]?.marks[0]?.name ?? "";
}

/** Panels follow at rest and after every event. */
export function settle(hop: Hop): void {
  if (hop.signals.asInInstrument.value.on) layAsInInstrument(hop);
  refreshWords(hop);
  refreshSheet(hop);
  refreshLadder(hop);
  refreshAgreement(hop);
  if (hop.signals.phase.value === "play") hop.keeper.changed();
  hop.invalidate();
}

/** After a change of instrument. */
export function afterGear(hop: Hop): void {
  hop.motion.changedMs = performance.now();
  hop.facts.gear = gearInUse(hop.attempt.session).kind;
  refreshGear(hop);
  hop.ports.sound.play("change");
}

/** An answered pin tells how it landed: the moment after an asked pin is no secret. */
export function pinLanded(hop: Hop, at: Dir): void {
  const { attempt, signals } = hop;
  const truth = tubeDir(attempt.session);
  const offFields = separationRad(at, truth) / (attempt.compiled.hoppingFieldDas * DAS_RAD);
  const good = offFields * 1000 <= PIN.fullPermille;
  signals.pins.value = [...signals.pins.value, { at, truth }];
  tell(hop, good ? say("hop.pinLanded") : say("hop.pinOff", { fields: fixed(offFields, 1) }));
  if (good) showProof(hop);
}
