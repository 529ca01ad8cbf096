/**
 * How much light a star of the page gives, by how far it is brighter than the limit: the law by which pictures of the field
 * are drawn, measured as the reader of pictures measures. An observer learns as much by comparing stars of known brightness.
 */

const FAINT_REACH = 2.7 * 0.82;
const GLARE_MAG = 2.6;
/** Magnitudes over the limit that are tabulated. */
const TABLE = { from: -0.3, to: 10, step: 0.05 } as const;
const STEP_PX = 0.02;

/** Light that belongs to the inner half of a star. */
export const HALF_REACH = 0.42;
export const reachOfFaint = (starPx: number): number => FAINT_REACH * starPx;

/** How far the glare of a star reaches, px; none about the fainter ones. */
export const glareOf = (d: number, starPx: number): number =>
  d > GLARE_MAG ? (7 + 7.5 * (d - GLARE_MAG)) * starPx : 0;

/** Share of the time for which a star about the limit is noticed. */
export const noticed = (d: number): number => {
  const logistic = (mag: number) => 1 / (1 + Math.exp(-mag / 0.12));
  return Math.min(1, Math.max(0, (logistic(d) - logistic(-0.4)) / (1 - 2 * logistic(-0.4))));
};

/** Share of its light that a star has where nothing comes and goes: whole from the limit up. */
export const standing = (d: number): number => Math.min(1, 2 * noticed(d));

/** Light over the sky at a distance from the middle of a star, display values. */
function lightOf(d: number, starPx: number, sky: number): (px: number) => number {
  const f = 0.27 * 10 ** (0.248 * d);
  const peak = Math.min(1, f) * standing(d);
  const core = reachOfFaint(starPx) * Math.max(1, f ** 0.36);
  const q = d - GLARE_MAG;
  const glare = glareOf(d, starPx);
  const alpha = 0.05 + 0.045 * q;
  const [inner, outer] = [Math.min(0.4, 1.5 * alpha), Math.min(0.2, 0.5 * alpha)];
  const star = (t: number) => (t < 1 ? peak * (0.75 * (1 - t * t) ** 4 + 0.25 * (1 - t * t)) : 0);
  const glow = (g: number) => (g < 0.25 ? inner + ((outer - inner) * g) / 0.25 : (outer * Math.max(0, 1 - g)) / 0.75);
  return (px) => Math.min(1 - sky, star(px / core) + (glare > 0 ? glow(px / glare) : 0));
}

/** Flux within the reach that the half-bright area tells. */
function fluxOf(d: number, starPx: number, sky: number): number {
  const light = lightOf(d, starPx, sky);
  let half = 0;
  while (light(half) > HALF_REACH) half += STEP_PX;
  const reach = Math.max(reachOfFaint(starPx), 2 * half) + 0.5;
  let flux = 0;
  for (let r = STEP_PX / 2; r < reach; r += STEP_PX) flux += 2 * Math.PI * r * STEP_PX * light(r);
  return flux;
}

export type Measures = readonly number[];

/** Flux by magnitudes over the limit, from `TABLE.from` on. */
export function measuresOf(starPx: number, sky: number): Measures {
  const count = Math.round((TABLE.to - TABLE.from) / TABLE.step);
  return Array.from({ length: count }, (_, i) => fluxOf(TABLE.from + i * TABLE.step, starPx, sky));
}

/** Magnitudes over the limit of a star that gives so much light. */
export function overLimitOf(measures: Measures, flux: number): number {
  const above = measures.findIndex((one) => one >= flux);
  if (above === 0) return TABLE.from;
  if (above < 0) return TABLE.to;
  const [low, high] = [measures[above - 1]!, measures[above]!];
  return TABLE.from + (above - 1 + (flux - low) / (high - low)) * TABLE.step;
}
