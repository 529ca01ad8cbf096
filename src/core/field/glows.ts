/** Which kinds are seen as a glow; the others are their stars. */
import type { ObjectKind } from "#core/seams/index.ts";

const GLOWS: ReadonlySet<ObjectKind> = new Set<ObjectKind>([
  "galaxy",
  "globularCluster",
  "planetaryNebula",
  "emissionNebula",
  "reflectionNebula",
  "supernovaRemnant",
  "comet",
]);

/** Whether an object of this kind is drawn as a veil of light. */
export const isGlow = (kind: ObjectKind): boolean => GLOWS.has(kind);
