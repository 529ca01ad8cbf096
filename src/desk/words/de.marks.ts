/** Waymarks of practice skies that say what they are: records and addresses have them in English, and so has the sky. */
export const DE_MARKS = {
  "the two equal stars": "die zwei gleichen Sterne",
  "the small triangle": "das kleine Dreieck",
};
