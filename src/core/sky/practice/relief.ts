/** Hills, hollows and lanes of a sky's density, by how bright its stars are. */

/** One size of hills: how far apart, and the variance of the logarithm at some galactic latitudes. */
export type Hills = { readonly spacingDeg: number; readonly variances: readonly number[] };
/** |b| at which the variances of {@link Hills} are given, straight between. */
export const HILL_LATITUDES_DEG: readonly number[] = [0, 10, 22, 32, 90];

export type Relief = {
  /** The counted longitudes nearest to this magnitude hold. */
  readonly toMag: number;
  readonly hills: readonly Hills[];
  /** By how much the logarithm falls in the middle of a dark lane; 0 for stars that lie before the dust. */
  readonly laneDepth: number;
  /** Steps of galactic latitude and longitude by which the mean of a parallel is taken, degrees. */
  readonly meanStepsDeg: readonly [latitude: number, longitude: number];
};

/**
 * Of the bright stars: associations, arms and the tilted belt of the nearest young stars. All variances were fitted to the
 * clumping of Tycho-2 (Hog et al. 2000, A&A 355, L27) in circles of 5, 7 and 10 degrees.
 */
export const BRIGHT_RELIEF: Relief = {
  toMag: 6.5,
  hills: [
    { spacingDeg: 2, variances: [0.12, 0.08, 0.06, 0, 0] },
    { spacingDeg: 6, variances: [0.07, 0.05, 0.1, 0, 0] },
    { spacingDeg: 14, variances: [0.05, 0.045, 0.07, 0, 0] },
  ],
  laneDepth: 0,
  meanStepsDeg: [2, 3],
};

/** To V 9.5: in circles of 1, 2.5 and 5 degrees. */
export const FAINT_RELIEF: Relief = {
  toMag: 9.5,
  hills: [
    { spacingDeg: 1.2, variances: [0.055, 0.008, 0.01, 0.003, 0] },
    { spacingDeg: 3, variances: [0.03, 0.026, 0.018, 0.004, 0] },
    { spacingDeg: 10, variances: [0.04, 0.028, 0.02, 0.008, 0] },
  ],
  laneDepth: 0.8,
  meanStepsDeg: [3, 5],
};

/** Beyond: in circles of half a degree to 2.5 degrees to V 11, and the same for what nobody counted. */
export const DEEP_RELIEF: Relief = {
  toMag: 11,
  hills: [
    { spacingDeg: 1.2, variances: [0.018, 0.01, 0.008, 0.001, 0] },
    { spacingDeg: 3, variances: [0.021, 0.027, 0.014, 0.004, 0] },
    { spacingDeg: 10, variances: [0.03, 0.04, 0.019, 0.008, 0] },
  ],
  laneDepth: 1,
  meanStepsDeg: [3, 5],
};

/** Hills further apart than this show in a glow that is measured as coarsely as the catalogue sky's. */
const SHOWN_IN_GLOW_DEG = 5;

/** Of the glow of stars too faint to be seen singly: the deep stars' without their small hills. */
export const GLOW_RELIEF: Relief = {
  ...DEEP_RELIEF,
  // Each size of hill keeps its place in the list, by which its pattern is drawn.
  hills: DEEP_RELIEF.hills.map(({ spacingDeg, variances }) => ({
    spacingDeg,
    variances: spacingDeg < SHOWN_IN_GLOW_DEG ? variances.map(() => 0) : variances,
  })),
};
