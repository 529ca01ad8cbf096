/** All that the eye's picture has at once, over the densest fields of the catalogue: as the page does it, frame by frame. */
import { DEG, dirFromRadec, offsetDir } from "#core/celestial/vector.ts";
import { scintillation } from "#core/eye/air.ts";
import { zenithConditions } from "#core/eye/conditions.ts";
import { eyeSeeing } from "#core/eye/eyeSeeing.ts";
import { NOTICING } from "#core/eye/noticing.ts";
import { starWidthArcsec } from "#core/eye/starImage.ts";
import type { ObjectLook } from "#core/field/objectLook.ts";
import { emptyField, fieldCone, seenField } from "#core/field/seenField.ts";
import { gearById } from "#core/optics/gear.ts";
import { hasVanes, VANE_RAD } from "#core/optics/vanes.ts";
import { fieldRadiusPlane, viewFromIcrs } from "#core/optics/viewFrame.ts";
import type { Dir, GearId, StarSource } from "#core/seams/index.ts";
import { tilesOfCone } from "#core/sky/catalogue/tilesOfCone.ts";
import { withFiller } from "#core/sky/filler/withFiller.ts";
import type { FieldObject, FieldView, Stage } from "../../../src/stage/index.ts";
import { pageSky, type Timing, timeFrames } from "./pageSky.ts";
import { createRawPoints } from "./rawPoints.ts";
import { PLAIN_VIEW } from "./scene.ts";

export interface EffectsScene {
  readonly gear: GearId;
  readonly raDeg: number;
  readonly decDeg: number;
}
export interface EffectsOptions {
  readonly frames: number;
  /** Draw the same stars as raw points instead: all of one size, or as wide as the stars' light reaches. */
  readonly raw: "no" | "dots" | "wide";
}
export interface Effects {
  /** One look and one picture. */
  frame(i: number): void;
  time(options: EffectsOptions): Promise<Timing>;
  /** Stars in the blocks of the field down to what is drawn, grain too. */
  readonly stars: number;
}

/** The field goes round in so many frames, by so much of its own width: a hand that searches. */
const ROUND = 240;
const ROUND_FIELDS = 0.15;
const AIR_MASS = 2;
/** As many spikes as stars have glare: more than any eye sees. */
const SPIKES_BELOW_MAG = 2.6;
const LOOKS: readonly Omit<ObjectLook, "seed">[] = [
  { form: "granules", resolved: 0.7, cut: 0.05 },
  { form: "disc", resolved: 0, cut: 0.1 },
  { form: "cloud", resolved: 0, cut: 0.2 },
];

const objectsAbout = (centre: Dir, fieldRad: number): FieldObject[] =>
  LOOKS.map((look, i) => ({
    dir: offsetDir(centre, 2.1 * i, 0.22 * fieldRad),
    majorRad: 0.2 * fieldRad,
    minorRad: 0.12 * fieldRad,
    axisRad: i,
    peak: 0.3,
    look: { ...look, seed: 0.2 + 0.3 * i },
  }));

/** The catalogue with the grain beyond it, every part of the round made. */
const wholeSky = async (ways: readonly Dir[], gear: GearId, limitMag: number): Promise<StarSource> => {
  const bare = pageSky();
  const cones = ways.map((dir) => fieldCone(dir, gearById(gear)));
  for (const cone of cones) await bare.want(tilesOfCone(cone, limitMag + 1), 0, new AbortController().signal);
  let again = true;
  const source = withFiller(bare, {
    isOn: () => true,
    again: () => {
      again = true;
    },
  });
  while (again) {
    again = false;
    for (const cone of cones) source.resident(cone, limitMag + 1);
  }
  return source;
};

export const createEffects = async (
  stage: Stage,
  fieldPx: number,
  { gear: id, raDeg, decDeg }: EffectsScene,
): Promise<Effects> => {
  const gear = gearById(id);
  const fieldRad = gear.fieldDeg * DEG;
  const centre = dirFromRadec(raDeg * DEG, decDeg * DEG);
  const zenith = offsetDir(centre, 0.4, 60 * DEG);
  const ways = Array.from({ length: ROUND }, (_, i) =>
    offsetDir(centre, (2 * Math.PI * i) / ROUND, ROUND_FIELDS * fieldRad),
  );
  const matrices = ways.map((dir) =>
    viewFromIcrs(dir, zenith, { parity: 1, rotationRad: Math.PI }, new Float64Array(9)),
  );
  const seeing = eyeSeeing(zenithConditions(21.3), []);
  const limitMag = seeing.star(centre, 0.7, id).avertedMilliMag / 1000;
  const source = await wholeSky(ways, id, limitMag);
  const air = { seconds: 0, zenithScatter: scintillation(gear.apertureMm, 1, 0), zenith };
  const view: { -readonly [K in keyof FieldView]: FieldView[K] } = {
    ...PLAIN_VIEW,
    planeRadius: fieldRadiusPlane(gear),
    limitMag,
    air,
    starWidthRad: (starWidthArcsec(gear, 2.5, AIR_MASS) / 3600) * DEG,
    objects: objectsAbout(centre, fieldRad),
    objectsVersion: 1,
    reticle: gear.kind === "finder" ? "cross" : "none",
    eyepiece: gear.kind === "eyepiece",
    spikes: hasVanes(gear) ? { top: zenith, belowMag: SPIKES_BELOW_MAG, vaneRad: VANE_RAD } : null,
  };
  const field = emptyField();
  const input = { pointing: centre, gear, source, seeing, objects: [] };
  const look = (i: number) => {
    input.pointing = ways[i % ROUND]!;
    seenField(input, field);
    view.viewFromIcrs = matrices[i % ROUND]!;
    view.blocks = field.blocks;
    air.seconds = i / 60;
  };
  const frame = (i: number) => {
    look(i);
    stage.draw(view);
  };
  const faintestMag = limitMag + NOTICING.edgeMag;
  const rawFrames = (raw: ReturnType<typeof createRawPoints>) => {
    let uploaded = -1;
    return (i: number) => {
      look(i);
      if (field.version !== uploaded) raw.upload(field.blocks, faintestMag);
      uploaded = field.version;
      raw.draw(matrices[i % ROUND]!, view.planeRadius, limitMag);
    };
  };
  look(0);
  const stars = field.blocks.reduce(
    (sum, block) => sum + block.milliMag.filter((one) => one <= 1000 * faintestMag).length,
    0,
  );
  return {
    frame,
    stars,
    async time({ frames, raw: kind }) {
      const stageGl = document.querySelector("canvas")!.getContext("webgl2")!;
      if (kind === "no") return timeFrames(stageGl, frames, frame);
      const raw = createRawPoints(stageGl.canvas.width, fieldPx, kind === "wide");
      const timing = await timeFrames(raw.gl, frames, rawFrames(raw));
      raw.destroy();
      return timing;
    },
  };
};
