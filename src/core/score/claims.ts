/** The claims of an attempt, judged again from its record. */
import { masFromDir } from "#core/celestial/vector.ts";
import type { AttemptRecord, Dir } from "#core/seams/index.ts";
import { judgeClaim } from "#core/session/claim.ts";
import { sampleOfEvent } from "./rests.ts";
import { PRICE } from "./rules.ts";

export type JudgedClaim = {
  readonly atMs: number;
  readonly says: "here" | "notSeen";
  readonly right: boolean;
  readonly place: Dir;
};

/** Claims in order, up to the first right or the third wrong one; claims before the anchor was confirmed do not exist. */
export function judgedClaims(record: AttemptRecord, dirs: readonly Dir[]): JudgedClaim[] {
  const claims: JudgedClaim[] = [];
  let gear = record.compiled.spec.gear[0] ?? "";
  for (const [i, event] of record.events.entries()) {
    if (event.kind === "use" || event.kind === "eyepiece") gear = event.gear;
    if (event.kind !== "claim" || dirs.length === 0) continue;
    const place = dirs[sampleOfEvent(record, i)]!;
    const verdict = judgeClaim(record.compiled, masFromDir(place), event.says, gear);
    if (verdict.verdict === "notAllowed") continue;
    const right = verdict.verdict === "right";
    claims.push({ atMs: event.tMs, says: event.says, right, place });
    if (right || claims.length === PRICE.wrongClaims.length) break;
  }
  return claims;
}
