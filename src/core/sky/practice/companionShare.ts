/**
 * Share of stars with a companion up to 5 mag fainter within 60". Tycho-2 (Hog et al. 2000, A&A 355, L27) has 0.077, 0.058
 * and 0.031 to V 11 for each star to V 6.5, 8 and 9.5, pairs of chance taken off: one share for all, cut at V 11. Fainter
 * stars, for which nothing was counted, are given the same.
 */
export const COMPANION_SHARE = 0.08;
export const FAINTER_MAG = 5;
