/** Words of the hops that are made from a seed word: the daily sky and free practice. They come with the start page. */
export const EN_SEED = {
  daily: "Sky of {date}",
  free: "Free practice: {seed}",

  freeRow: "Free practice",
  freeNote: "any word grows a sky",
  freeLabel: "A word for the sky",
  freeSay:
    "Each word grows a whole sky of its own, with one hop through it. The same word is the same sky for everyone.",
  freeWrong: "A word has letters a to z, figures and hyphens, 32 at most.",
  freeOther: "Another word",
  freeBegin: "Hop here",
  dailyRow: "The daily sky",
  dailyNote: "one hop, the same for everyone",
  dailyDone: "today: {result}",

  briefing: "A soft spot called {target} lies four degrees from the bright star {anchor}.",
  halfTurn: "The finder turns the sky by half: what is up lies at the bottom.",
  mirrorDiagonal: "The finder's image is mirrored. Flip the page before you turn it.",
  erectingDiagonal: "The finder shows the sky the right way round.",
  ownSky: "Nobody knows this sky by heart. The page is all there is.",

  wayOfSteps: "by the star and the triangle",
  wayStraight: "straight to the triangle",

  findAnchor: "Find {anchor}.",
  findAnchorSay: "It is the brightest star of the {figure}, half way up in the {where}. Put the sight's dot on it.",
  openFinder: "Open the finder.",
  openFinderSay: "Turn the sheet until its stars lie as they do in the finder. Then choose your steps.",
  goOn: "Go from star to star.",
  goOnSay: "Keep the old star in the field until you hold the new one. Stop where the sheet has {target}.",
  claim: "Say what you have found.",
  claimSay: "Look for a soft oval with no star in it. Put it in the middle and claim it.",

  toStar: "Look for a single bright star within half a field.",
  toStarLike: "It is the brightest on that side, and a little orange.",
  toTriangle: "Go on the same way, by a little less.",
  toTriangleLike: "Three stars make a small triangle; one outshines the others.",
  toTarget: "From the triangle it is one more step, a degree long.",
  toTargetLike: "It is soft when the stars are sharp.",
  line: "Follow the line.",

  found: "Found: {trailDeg} degrees, and {parDeg} would do.",
  wrong: "That is a star, or nothing at all. The soft spot is still there.",
  shown: "The line led you there. Any seed word gives you another sky.",
  notSeen: "The place is right. An honest no is an observation.",
  missed: "You stopped {shortFields} fields short. Count the fields first, then look.",
  outside: "That lies off the page. Go back to {anchor} and count from there.",
  afterwards: "You went {trailFields} fields; the shortest way is {parFields}.",
} as const;
