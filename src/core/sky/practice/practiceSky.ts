/** What a practice sky calls its stars, how it joins them, what else is in it, and how one gets there. */
import type { Dir, SkyObject } from "#core/seams/index.ts";
import type { Figure, FigureSegment, NamedStar, SkyNames } from "../names/types.ts";
import { loreOf } from "./constellations.ts";
import type { SkyStar } from "./frame.ts";
import { lettered } from "./letters.ts";
import { numbered, type Unnumbered } from "./numbered.ts";
import { planOf, type SkyPlan } from "./plan.ts";
import { CLUSTER_WIDE_ARCMIN } from "./plantings.ts";
import { type ConstellationAt, constellationsBy } from "./regions.ts";
import { wildObjects } from "./wildObjects.ts";

/** A place to pass on the way, with the words for it. */
export type PracticeMark = { readonly name: string; readonly dir: Dir };
export type PracticeFacts = {
  readonly anchor: NamedStar;
  readonly cluster: SkyObject;
  readonly galaxy: SkyObject;
  /** What lies between the anchor and the cluster: one pair half way. */
  readonly clusterWay: readonly PracticeMark[];
  /** What lies between the anchor and the galaxy: a star, then a small triangle. */
  readonly galaxyWay: readonly PracticeMark[];
};
type Sky = {
  readonly names: SkyNames;
  readonly at: ConstellationAt;
  readonly objects: readonly SkyObject[];
  readonly facts: PracticeFacts;
};

const skies = new WeakMap<SkyPlan, Sky>();

/** Stars with names, letters or numbers, and the figures of a seed's sky; each line joins two of its stars. */
export function practiceNames(seed: string): SkyNames {
  return skyOf(seed).names;
}

/** The constellation of each direction of a seed's sky. */
export function practiceConstellations(seed: string): ConstellationAt {
  return skyOf(seed).at;
}

/** The objects of a seed's sky: the cluster and the galaxy by its anchor, then all others by right ascension. */
export function practiceObjects(seed: string): readonly SkyObject[] {
  return skyOf(seed).objects;
}

/** The practised part of a seed's sky: its anchor, its two targets, and the marks on the way to each. */
export function practiceFacts(seed: string): PracticeFacts {
  return skyOf(seed).facts;
}

function skyOf(seed: string): Sky {
  const plan = planOf(seed);
  const known = skies.get(plan);
  if (known) return known;
  const segments = segmentsOf(plan);
  const at = constellationsBy(segments);
  const names = namesOf(plan, segments, at);
  const [cluster, galaxy] = plantedObjects(plan, at);
  const objects = [cluster, galaxy, ...wildObjects(plan, at)];
  const made = { names, at, objects, facts: factsOf(plan, names, cluster, galaxy) };
  skies.set(plan, made);
  return made;
}

function segmentsOf({ figures }: SkyPlan): FigureSegment[] {
  return figures.flatMap(({ abbr, stars, lines }) =>
    lines.map(([from, to]) => ({ from: stars[from]!.dir, to: stars[to]!.dir, figure: abbr })),
  );
}

function namesOf(plan: SkyPlan, segments: readonly FigureSegment[], at: ConstellationAt): SkyNames {
  const { words, figures, bright, anchor, cluster, galaxy } = plan;
  const numbered = [...cluster.pair, galaxy.lone, ...galaxy.triangle];
  // The anchor has the first name, the brightest others the rest.
  const proper = new Map(
    [anchor, ...bright.filter((star) => star !== anchor)].map((star, i) => [star, words.stars[i]]),
  );
  const stars = [
    ...lettered(bright, at).map(({ star, con, label }): NamedStar => {
      const name = proper.get(star);
      return starWith(star, { label, con, ...(name === undefined ? {} : { proper: name }) });
    }),
    ...numbered.map((star, i) => starWith(star, { label: `${i + 1}`, flamsteed: i + 1, con: at(star.dir) })),
  ];
  return {
    stars: stars.sort((a, b) => a.magV - b.magV),
    segments,
    figures: figures.map(({ abbr, name, middle }): Figure => {
      const lore = loreOf(abbr);
      return { abbr, name, centre: middle, ...(lore === undefined ? {} : { lore }) };
    }),
  };
}

type Designation = Omit<NamedStar, "dir" | "magV" | "colourBV">;

function starWith({ dir, milliMag, colourBV }: SkyStar, designation: Designation): NamedStar {
  return { dir, magV: milliMag / 1000, colourBV, ...designation };
}

function plantedObjects(plan: SkyPlan, at: ConstellationAt): [SkyObject, SkyObject] {
  const { words, cluster, galaxy } = plan;
  const knot: Unnumbered = {
    names: [words.cluster],
    kind: "openCluster",
    dir: cluster.centre,
    magV: cluster.magV,
    majorArcmin: CLUSTER_WIDE_ARCMIN,
    minorArcmin: CLUSTER_WIDE_ARCMIN,
    axisDeg: 0,
    profile: "members",
    looks: "A handful of stars close together, most of them blue-white.",
  };
  const oval: Unnumbered = {
    names: [words.galaxy],
    kind: "galaxy",
    dir: galaxy.centre,
    magV: galaxy.magV,
    majorArcmin: galaxy.majorArcmin,
    minorArcmin: galaxy.minorArcmin,
    axisDeg: galaxy.axisDeg,
    profile: "exponential",
    looks: "A soft oval, brighter towards its middle, with no star in it.",
  };
  return [numbered(plan, 1, knot, at), numbered(plan, 2, oval, at)];
}

function factsOf(plan: SkyPlan, names: SkyNames, cluster: SkyObject, galaxy: SkyObject): PracticeFacts {
  const named = (star: SkyStar) => names.stars.find(({ dir }) => dir === star.dir)!;
  const lone = named(plan.galaxy.lone);
  return {
    anchor: named(plan.anchor),
    cluster,
    galaxy,
    clusterWay: [{ name: "the two equal stars", dir: plan.cluster.pairMiddle }],
    galaxyWay: [
      { name: `${lone.label} ${lone.con}`, dir: lone.dir },
      { name: "the small triangle", dir: plan.galaxy.triangleMiddle },
    ],
  };
}
