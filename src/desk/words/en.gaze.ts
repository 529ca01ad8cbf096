/** Words of staring, looking beside and an eye that is not used to the dark. */
export const EN_GAZE = {
  beside: "Beside",
  besideSaid: "Look beside: hold, or press once to keep it so",
  nowBeside: "You look beside: what is faint comes up.",
  nowStares: "You stare: what is faint goes where you look straight.",
} as const;
