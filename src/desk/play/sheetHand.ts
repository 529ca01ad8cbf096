/** What of the model is white on the sheet, and how its lamp stands. */
import { GEAR } from "#core/optics/gear.ts";
import type { SheetHand } from "../sheet/types.ts";
import type { PlayModel } from "./model.ts";

export const handOf = (model: PlayModel): SheetHand => ({
  ring: model.ring.value,
  pointing: model.pointing.value,
  trail: model.trail.value,
  pins: model.pins.value,
  pencil: model.pencil.value,
});

export const lampOf = (model: PlayModel): "low" | "full" => (model.handOnField.value ? "low" : "full");

/** Field of the instrument to hop with: what distances are counted in. */
export const hoppingFieldDeg = ({ lesson }: Pick<PlayModel, "lesson">): number =>
  GEAR.get(lesson.gear.hopping)?.fieldDeg ?? 5;
