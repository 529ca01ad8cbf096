export { NoPictureError } from "./renderer.ts";
export { createStage, type Pixels, type Stage, type StageEvents } from "./stage.ts";
export type {
  FieldAir,
  FieldBody,
  FieldGaze,
  FieldHorizon,
  FieldLine,
  FieldObject,
  FieldSpikes,
  FieldView,
  Lamp,
  Reach,
  Reticle,
  Rgb,
  StageLayout,
  ViewProjection,
} from "./view.ts";
