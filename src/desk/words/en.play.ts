/** Words of the play screen. */
export const EN_PLAY = {
  lessonOf: "Lesson {number} of {of}",
} as const;
