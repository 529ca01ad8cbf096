/** What is hopped to over a seed's sky: what the site's sky lets the instruments show. */
import { mixHash32 } from "#core/celestial/hash.ts";
import { type Place, seeingAt } from "#core/eye/eyeSeeing.ts";
import type { Dir, Gear, SkyObject } from "#core/seams/index.ts";
import { practiceGlowBeyond } from "#core/sky/glow/practiceGlow.ts";
import type { NamedStar } from "#core/sky/names/types.ts";
import { practiceFacts, practiceNames, practiceObjects } from "#core/sky/practice/practiceSky.ts";
import { litWays } from "./litWays.ts";

/** Keeps this draw apart from those of the sky itself. */
const TARGET_DRAW = 102;

/** A place on a way. */
export type Stop = { readonly name: string; readonly dir: Dir };
/** A star by the name that a lesson finds it by. */
export const stopOf = ({ proper, label, con = "", dir }: NamedStar): Stop => ({
  name: proper ?? `${label} ${con}`,
  dir,
});

/** What is hopped to, from where, by which marks. */
export interface SeedPlan {
  /**
   * The galaxy by the anchor of every sky; under a sky that hides it a cluster that a star leads to, or, where none does, the
   * cluster by the anchor.
   */
  readonly goal: "galaxy" | "openCluster" | "globularCluster" | "nearCluster";
  readonly anchor: NamedStar;
  readonly target: SkyObject;
  readonly marks: readonly Stop[];
}
/** Where, when and with what. */
export interface SeedNight {
  readonly place: Place;
  readonly utcMs: number;
  readonly hopping: Gear;
  readonly claim: Gear;
}

/** The galaxy, where the claim instrument shows it and not just at the edge; else a cluster that stands the sky. Pure. */
export function planUnder(word: string, hash: number, night: SeedNight): SeedPlan {
  const facts = practiceFacts(word);
  const objects = practiceObjects(word);
  const seeing = seeingAt(night.place, night.utcMs, objects, { glowMuAt: practiceGlowBeyond(word) });
  if (seeing.object(facts.galaxy.id, night.claim.id).band === "seen")
    return { goal: "galaxy", anchor: facts.anchor, target: facts.galaxy, marks: facts.galaxyWay };
  const ways = litWays({ ...night, stars: practiceNames(word).stars, objects, seeing });
  const drawn = ways[mixHash32(hash, TARGET_DRAW) % ways.length];
  if (!drawn) return { goal: "nearCluster", anchor: facts.anchor, target: facts.cluster, marks: facts.clusterWay };
  const { anchor, mark, target } = drawn;
  const goal = target.kind === "globularCluster" ? "globularCluster" : "openCluster";
  return { goal, anchor, target, marks: [stopOf(mark)] };
}
