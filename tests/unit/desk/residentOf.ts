/** The stars that compiling a hop asks for. */
import { DEG, dirFromMas, separationRad } from "#core/celestial/vector.ts";
import { gearById } from "#core/optics/gear.ts";
import type { HopSpec, Resident, Seeing, StarSource } from "#core/seams/index.ts";

export async function residentOf(source: StarSource, spec: HopSpec, seeing: Seeing): Promise<Resident> {
  const centre = dirFromMas(spec.anchor);
  const marks = spec.ways.flatMap((way) => way.marks.map(({ dir }) => dirFromMas(dir)));
  const fieldRad = gearById(spec.hoppingGear).fieldDeg * DEG;
  const radiusRad = Math.max(...marks.map((mark) => separationRad(centre, mark))) + fieldRad;
  const limitMag = seeing.star(centre, 0.7, spec.hoppingGear).directMilliMag / 1000;
  const { missing } = source.resident({ centre, radiusRad }, limitMag);
  await source.want([...missing], 0, new AbortController().signal);
  return source.resident({ centre, radiusRad }, limitMag);
}
