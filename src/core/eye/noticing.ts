/** How often a star near the limit is noticed. */
import { exactExp } from "#core/celestial/exactMath.ts";
import { EDGE_MILLI_MAG } from "./margin.ts";

/** Steepness of the curve, mag (fitted, no source), and where it ends: the edge, within which the model is no better. */
const SCALE_MAG = 0.12;
const EDGE_MAG = EDGE_MILLI_MAG / 1000;
const logistic = (marginMag: number) => 1 / (1 + exactExp(-marginMag / SCALE_MAG));

/** The curve's figures; `missed` is what the logistic would still give at its end. */
export const NOTICING = { scaleMag: SCALE_MAG, edgeMag: EDGE_MAG, missed: logistic(-EDGE_MAG) } as const;

/**
 * Share of the time for which free gaze notices a star: half at the limit, always above the edge and never below it. The
 * logistic form is common for frequencies of seeing; steepness and ends are a drawing rule (no source).
 * @param marginMag by how much the star is brighter than the limit
 */
export const noticing = (marginMag: number): number =>
  Math.min(1, Math.max(0, (logistic(marginMag) - NOTICING.missed) / (1 - 2 * NOTICING.missed)));

/**
 * How a star stands where nothing comes and goes, as a share of its own light: whole from the limit up, where it is just there,
 * and softly less down to the edge (drawing rule): twice the share of the time for which it is noticed.
 */
export const standing = (marginMag: number): number => Math.min(1, 2 * noticing(marginMag));
