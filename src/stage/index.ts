export type { Reach } from "./reach.ts";
export { NoPictureError } from "./renderer.ts";
export { createStage, type Pixels, type Stage, type StageEvents } from "./stage.ts";
export type {
  FieldAir,
  FieldHorizon,
  FieldLine,
  FieldObject,
  FieldView,
  Lamp,
  Reticle,
  Rgb,
  StageLayout,
  ViewProjection,
} from "./view.ts";
