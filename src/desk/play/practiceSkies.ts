/** Practice skies as the page uses them: their code comes when a lesson has one. */
import { glowOfSky } from "#core/sky/glow/glowOfSky.ts";
import {
  practiceConstellations,
  practiceFacts,
  practiceNames,
  practiceObjects,
} from "#core/sky/practice/practiceSky.ts";
import { createPracticeSource, type MakeTile } from "#core/sky/practice/practiceSource.ts";
import type { OpenSky } from "./openSky.ts";

/** Opens the sky of a seed word. @throws InputError where it is none */
export function openPracticeSky(seed: string, makeTile: MakeTile): OpenSky {
  const { clusterWay, galaxyWay } = practiceFacts(seed);
  return {
    source: createPracticeSource(seed, makeTile),
    names: practiceNames(seed),
    objects: practiceObjects(seed),
    places: [...clusterWay, ...galaxyWay],
    bordersWithin: (cone) =>
      import("#core/sky/practice/practiceBorders.ts").then(
        ({ practiceBordersWithin }) => practiceBordersWithin(practiceConstellations(seed), cone),
        () => [],
      ),
    glow: () => glowOfSky({ kind: "practice", seed }),
    failures: () => [],
    retry: () => undefined,
  };
}
