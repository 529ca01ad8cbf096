/** What a practice sky calls its stars, how it joins them, what else is in it, and how one gets there. */
import { dot, normalise } from "#core/celestial/vector.ts";
import type { Dir, SkyObject } from "#core/seams/index.ts";
import type { Figure, FigureSegment, NamedStar, SkyNames } from "../names/types.ts";
import type { FigurePlan } from "./figures.ts";
import type { SkyStar } from "./frame.ts";
import { planOf, type SkyPlan } from "./plan.ts";
import { CLUSTER_WIDE_ARCMIN } from "./plantings.ts";
import type { FigureWord } from "./words.ts";

const LETTERS = "αβγδεζ";

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
type Sky = { readonly names: SkyNames; readonly objects: readonly SkyObject[]; readonly facts: PracticeFacts };

const skies = new WeakMap<SkyPlan, Sky>();

/** Stars with names, letters or numbers, and three figures of a seed's sky; each line joins two of its stars. */
export function practiceNames(seed: string): SkyNames {
  return skyOf(seed).names;
}

/** The cluster and the galaxy of a seed's sky. */
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
  const names = namesOf(plan);
  const [cluster, galaxy] = objectsOf(plan);
  const made = { names, objects: [cluster, galaxy], facts: factsOf(plan, names, cluster, galaxy) };
  skies.set(plan, made);
  return made;
}

function namesOf(plan: SkyPlan): SkyNames {
  const { words, figures, cluster, galaxy, loners } = plan;
  const numbered = [...cluster.pair, galaxy.lone, ...galaxy.triangle];
  const stars = [
    ...figures.flatMap((figure, i) => lettered(figure, words.figures[i]!, words.stars[i]!)),
    ...numbered.map((star, i) => starWith(star, { label: `${i + 1}`, flamsteed: i + 1, con: words.figures[0]!.abbr })),
    ...loners.flatMap((star, i) => {
      const proper = words.stars[figures.length + i];
      return proper === undefined ? [] : [starWith(star, { label: proper, proper })];
    }),
  ];
  return {
    stars: stars.sort((a, b) => a.magV - b.magV),
    segments: figures.flatMap((figure, i) => segmentsOf(figure, words.figures[i]!)),
    figures: figures.map(({ stars: own }, i): Figure => ({ ...words.figures[i]!, centre: middleOf(own) })),
  };
}

type Designation = Omit<NamedStar, "dir" | "magV" | "colourBV">;

function starWith({ dir, milliMag, colourBV }: SkyStar, designation: Designation): NamedStar {
  return { dir, magV: milliMag / 1000, colourBV, ...designation };
}

function lettered({ stars }: FigurePlan, { abbr }: FigureWord, proper: string): NamedStar[] {
  return stars.map((star, rank) => {
    const label = LETTERS.charAt(rank);
    return starWith(star, { label, con: abbr, ...(rank === 0 ? { proper } : {}) });
  });
}

function segmentsOf({ stars, lines }: FigurePlan, { abbr }: FigureWord): FigureSegment[] {
  return lines.map(([from, to]) => ({ from: stars[from]!.dir, to: stars[to]!.dir, figure: abbr }));
}

function middleOf(stars: readonly { readonly dir: Dir }[]): Dir {
  const sum = (axis: 0 | 1 | 2) => stars.reduce((total, { dir }) => total + dir[axis], 0);
  return normalise([sum(0), sum(1), sum(2)]);
}

/** Abbreviation of the figure whose middle is nearest. */
function figureAt({ figures, words }: SkyPlan, dir: Dir): string {
  const nearness = figures.map(({ stars }) => dot(middleOf(stars), dir));
  return words.figures[nearness.indexOf(Math.max(...nearness))]?.abbr ?? "";
}

function objectsOf(plan: SkyPlan): [SkyObject, SkyObject] {
  const { seed, words, cluster, galaxy } = plan;
  const title = seed.word.charAt(0).toUpperCase() + seed.word.slice(1);
  return [
    {
      id: `${seed.word}-1`,
      names: [words.cluster, `${title} 1`],
      kind: "openCluster",
      dir: cluster.centre,
      magV: cluster.magV,
      majorArcmin: CLUSTER_WIDE_ARCMIN,
      minorArcmin: CLUSTER_WIDE_ARCMIN,
      axisDeg: 0,
      profile: "members",
      constellation: figureAt(plan, cluster.centre),
      looks: "A handful of stars close together, most of them blue-white.",
    },
    {
      id: `${seed.word}-2`,
      names: [words.galaxy, `${title} 2`],
      kind: "galaxy",
      dir: galaxy.centre,
      magV: galaxy.magV,
      majorArcmin: galaxy.majorArcmin,
      minorArcmin: galaxy.minorArcmin,
      axisDeg: galaxy.axisDeg,
      profile: "exponential",
      constellation: figureAt(plan, galaxy.centre),
      looks: "A soft oval, brighter towards its middle, with no star in it.",
    },
  ];
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
