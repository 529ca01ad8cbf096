/** Judging a claim: whole numbers only, so that page, command line and a later replay agree. */
import { separationDas } from "#core/celestial/vector.ts";
import { fieldDas, gearById } from "#core/optics/gear.ts";
import type { CompiledAttempt, GearId, MasDir } from "#core/seams/index.ts";

/** Share of the field's radius that the middle of the field reaches, percent. */
export const MIDDLE_PERCENT = 35;
/** A claim lies within this and half the target's size. */
const CLOSE_DAS = 9000;

export type Says = "here" | "notSeen";
export type Judged = {
  readonly verdict: "right" | "wrong" | "notAllowed";
  /** Index of the target that was meant (the nearest one), and how far off the middle of the field it lies. */
  readonly target: number;
  readonly offDas: number;
  /** The nearest thing that the instrument shows, target or not. */
  readonly nearestId: string;
};

/** The true field that an attempt was compiled with; the instrument's own where the attempt does not list it. */
export function compiledFieldDas(compiled: CompiledAttempt, gear: GearId): number {
  return compiled.limits.find((limit) => limit.gear === gear)?.fieldDas ?? fieldDas(gearById(gear));
}

/** How far from the middle counts as in the middle: 0.35 of the radius. */
export function middleDas(compiled: CompiledAttempt, gear: GearId): number {
  return Math.floor((compiledFieldDas(compiled, gear) * MIDDLE_PERCENT) / 200);
}

/**
 * Judges "this is it" or "right place, nothing seen" where the instrument points. Right if a target is the nearest visible
 * object to the centre and within min(0.35 of the radius, 15' + half its size), both whole das; "nothing seen" is right
 * besides only where the target is not plainly seen: no verdict hangs on an edge case. Equal distances: the target, then
 * the lower index. A claim in another than the claim instrument is not allowed.
 * @param found indices of targets that are claimed already and stand no more in question
 */
export function judgeClaim(
  compiled: CompiledAttempt,
  pointing: MasDir,
  says: Says,
  gear: GearId,
  found: readonly number[] = [],
): Judged {
  const { targets, claimGear } = compiled.spec;
  let target = -1;
  let offDas = Number.MAX_SAFE_INTEGER;
  targets.forEach(({ dir }, index) => {
    const das = separationDas(pointing, dir);
    if (das < offDas && !found.includes(index)) [target, offDas] = [index, das];
  });
  const meant = targets[target];
  if (!meant) return { verdict: "notAllowed", target, offDas, nearestId: "" };
  let nearestId = meant.objectId;
  let nearestDas = offDas;
  for (const rival of compiled.rivals) {
    const das = separationDas(pointing, rival.dir);
    if (das < nearestDas) [nearestId, nearestDas] = [rival.objectId, das];
  }
  const reachDas = Math.min(middleDas(compiled, gear), CLOSE_DAS + Math.floor(meant.sizeDas / 2));
  const inPlace = offDas <= reachDas && nearestDas === offDas;
  const fits = says === "here" || compiled.targetBands[target] !== "seen";
  const verdict = gear !== claimGear ? "notAllowed" : inPlace && fits ? "right" : "wrong";
  return { verdict, target, offDas, nearestId };
}
