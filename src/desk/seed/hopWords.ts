/** What is said in a hop that is made from a seed word. */
import { DEG } from "#core/celestial/vector.ts";
import type { SeedHop, SeedWords } from "#core/lesson/seedLesson.ts";
import type { SiteSky } from "#core/lesson/siteSkies.ts";
import { gearById } from "#core/optics/gear.ts";
import { compassOf } from "../print/figures.ts";
import { markName, written } from "../words/say.ts";
import { saySeed as say, seedWords } from "./seedIds.ts";

const PLACE_KEY = {
  city: "placeCity",
  suburb: "placeSuburb",
  village: "placeVillage",
  country: "placeCountry",
  mountain: "placeMountain",
} as const satisfies Record<SiteSky, string>;
const CLAIM_KEY = {
  galaxy: "claimSay",
  openCluster: "claimCluster",
  nearCluster: "claimCluster",
  globularCluster: "claimGlobular",
} as const satisfies Record<SeedHop["goal"], string>;

/** To half a degree: nobody steps more finely. */
const halfDegrees = (deg: number): string => written(Math.max(0.5, Math.round(2 * deg) / 2));

function imageWords({ hopping }: SeedHop): string {
  const { path } = gearById(hopping);
  return path === "halfTurn" || path === "mirrorDiagonal" ? say(path) : say("erectingDiagonal");
}

/** Where the anchor is: the anchor of the sky itself is its figure's brightest star, the others belong to theirs. */
function anchorWords({ goal, figure, anchorAzRad }: SeedHop): string {
  const where = compassOf(anchorAzRad / DEG);
  const isFirst = goal === "galaxy" || goal === "nearCluster";
  return isFirst ? say("findAnchorSay", { figure, where }) : say("findInFigure", { figure, where });
}

function stepsOf(hop: SeedHop): SeedWords["hop"]["steps"] {
  const { anchor, target, goal } = hop;
  return [
    { when: "start", now: say("findAnchor", { anchor }), say: anchorWords(hop) },
    { when: "anchorConfirmed", now: say("openFinder"), say: say("openFinderSay") },
    { when: "gear:finder", now: say("goOn"), say: say("goOnSay", { target }) },
    { when: "gear:eyepiece", now: say("claim"), say: say(CLAIM_KEY[goal]) },
  ];
}

/** Hints of a way by one mark to a cluster. */
function clusterHints({ anchor, goal, ways, legsDeg }: SeedHop): SeedWords["hop"]["hints"] {
  const mark = markName(ways[0]![1]!);
  const [first, second] = legsDeg.map(halfDegrees);
  return [
    [
      say("toMark", { mark, deg: first!, anchor }),
      say(goal === "nearCluster" ? "toPairLike" : "toMarkLike"),
      say("line"),
    ],
    [
      say("toCluster", { mark, deg: second! }),
      say(goal === "globularCluster" ? "toGlobularLike" : "toClusterLike"),
      say("line"),
    ],
  ];
}

const galaxyHints = (): SeedWords["hop"]["hints"] => [
  [say("toStar"), say("toStarLike"), say("line")],
  [say("toTriangle"), say("toTriangleLike"), say("line")],
  [say("toTarget"), say("toTargetLike"), say("line")],
];

/** The words of a hop under a title. Braces that are left are filled by the report. */
export function wordsFor(hop: SeedHop, title: string, sky: SiteSky): SeedWords {
  const { goal, anchor, target, ways, legsDeg } = hop;
  const isGalaxy = goal === "galaxy";
  const deg = halfDegrees(legsDeg.reduce((sum, leg) => sum + leg, 0));
  const briefing = isGalaxy ? say("briefing", { target, anchor }) : say("briefingCluster", { target, deg, anchor });
  return {
    title,
    placeName: say(PLACE_KEY[sky]),
    briefing: [briefing, imageWords(hop), say("ownSky")],
    ways: isGalaxy
      ? [say("wayOfSteps"), say("wayStraight")]
      : [say("wayOfMark", { mark: markName(ways[0]![1]!) }), say("wayWithout")],
    hop: {
      steps: stepsOf(hop),
      hints: isGalaxy ? galaxyHints() : clusterHints(hop),
      after: {
        found: seedWords().found,
        wrong: isGalaxy ? seedWords().wrong : say("wrongCluster", { target }),
        shown: seedWords().shown,
        notSeen: seedWords().notSeen,
        missed: seedWords().missed,
        outside: seedWords().outside,
        codes: {},
      },
    },
    afterwards: [seedWords().afterwards],
  };
}
