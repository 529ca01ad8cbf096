/** A sky of three stars and two objects, for lessons in tests. */
import { DEG, dirFromRadec } from "#core/celestial/vector.ts";
import { bodiesOf } from "#core/lesson/bodies.ts";
import type { FoundSpot, Lookups, SkyLookup } from "#core/lesson/lookups.ts";
import { withBodies } from "#core/lesson/skyLookup.ts";
import type { Band, Seeing, SkyObject } from "#core/seams/index.ts";

const at = (raDeg: number, decDeg: number) => dirFromRadec(raDeg * DEG, decDeg * DEG);
const star = (name: string, raDeg: number, decDeg: number, magV: number): FoundSpot => ({
  name,
  dir: at(raDeg, decDeg),
  magV,
  colourBV: 0.5,
});
const object = (id: string, raDeg: number, decDeg: number, magV: number): SkyObject => ({
  id,
  names: [id],
  kind: "openCluster",
  dir: at(raDeg, decDeg),
  magV,
  majorArcmin: 12,
  minorArcmin: 8,
  axisDeg: 30,
  profile: "members",
  constellation: "",
  looks: "a pale spot",
});

const STARS = [
  star("Bright", 300, 20, 3.5),
  star("Mark", 300, 22, 6),
  star("Dim", 300, 22, 9),
  star("Faint", 300, 22.5, 12),
  star("Low", 120, -20, 3),
];
const OBJECTS = [object("Cluster", 300, 24, 7), object("Neighbour", 301, 25, 9), object("Ghost", 300.5, 23.5, 14)];

const find = (name: string): FoundSpot | undefined => {
  const named = OBJECTS.find(({ id }) => id === name);
  return named
    ? { name, dir: named.dir, magV: named.magV, colourBV: 0.7, object: named }
    : STARS.find((each) => each.name === name);
};
const sky: SkyLookup = {
  ref: { kind: "catalogue", skyVersion: 1 },
  find,
  names: () => [...STARS.map(({ name }) => name), ...OBJECTS.map(({ id }) => id)],
  objects: OBJECTS,
};
/** The third body that a lesson brings along is never seen. */
const UNSEEN = ["Ghost", "body-3"];
const seeing: Seeing = {
  version: 1,
  star: (_dir, _bv, gear) => ({
    avertedMilliMag: gear === "eye" ? 5800 : 9800,
    directMilliMag: gear === "eye" ? 4300 : 8300,
  }),
  object: (id) => {
    const marginMilliMag = UNSEEN.includes(id) ? -2000 : 1500;
    const band: Band = UNSEEN.includes(id) ? "not" : "seen";
    return { marginMilliMag, band, bestMagnification: 48 };
  },
};

export const smallLookups: Lookups = { sky: (lesson) => withBodies(sky, bodiesOf(lesson)), seeing: () => seeing };
