/** Where the Sallowfell Observers stand: the site of hops that no lesson file has placed. */
export const SALLOWFELL_HILL = {
  name: "Sallowfell hill",
  latDeg: 50,
  lonDeg: 0,
  heightM: 250,
  skyMagPerArcsec2: 20.8,
} as const;
