/** The moment when sheet and field agree: told in guided and completion lessons, with the three stars that prove it. */
import { agreeingView, agreement } from "#core/chart/agreement.ts";
import { projectionOf } from "#core/chart/page.ts";
import type { Dir } from "#core/seams/index.ts";
import { gearInUse } from "#core/session/session.ts";
import { say } from "../words/say.ts";
import { starsInField } from "./fieldWords.ts";
import { type Hop, isGuided } from "./hop.ts";

const PROOF_STARS = 3;

/** Lays the sheet as the instrument shows the sky. */
export function layAsInInstrument({ signals, picture }: Hop): void {
  const page = signals.page.value;
  if (!page) return;
  signals.sheetView.value = { ...signals.sheetView.value, ...agreeingView(page, picture.viewFromIcrs) };
}

/** The brightest stars of the field that stand on the page too. */
function proofStars({ signals, picture, field }: Hop): Dir[] {
  const page = signals.page.value;
  if (!page) return [];
  const projection = projectionOf(page);
  const point = { x: 0, y: 0 };
  return starsInField(picture, field.blocks, 12)
    .stars.filter(({ dir, out }) => out < 0.92 && projection.project(dir, point) && projection.holds(point, 10))
    .slice(0, PROOF_STARS)
    .map(({ dir }) => dir);
}

/** Joins the stars that prove it, on field and sheet, for a second. */
export function showProof(hop: Hop): void {
  const dirs = proofStars(hop);
  if (dirs.length < 2) return;
  hop.signals.proof.value = { stars: dirs };
  hop.picture.lines = dirs.slice(1).map((to, i) => ({ from: dirs[i]!, to }));
  hop.motion.proofMs = performance.now();
  hop.ports.sound.play("waymark");
  hop.invalidate();
}

/** Whether the sheet agrees now; a fresh agreement is a moment. */
export function refreshAgreement(hop: Hop): void {
  const { signals, attempt, picture } = hop;
  const page = signals.page.value;
  const { kind } = gearInUse(attempt.session);
  if (!page || !isGuided(hop) || kind === "eye") {
    signals.agrees.value = null;
    return;
  }
  const { agrees } = agreement(signals.sheetView.value, agreeingView(page, picture.viewFromIcrs));
  if (agrees && signals.agrees.value === false) {
    signals.notice.value = say("hop.agrees");
    showProof(hop);
  }
  signals.agrees.value = agrees;
}
