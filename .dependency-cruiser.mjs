/** Dependencies point one way. Each rule says why, in the words a contributor will read. */
const core = (room) => `^src/core/${room}/`;
/** Each room and the rooms of core it may know besides the seams. */
const mayKnow = {
  celestial: [],
  optics: ["celestial"],
  eye: ["celestial", "optics"],
  sky: ["celestial", "optics", "eye"],
  field: ["celestial", "optics", "eye", "sky"],
  session: ["celestial", "optics", "eye", "sky", "field"],
  hop: ["celestial", "optics", "eye", "sky", "field"],
  score: ["celestial", "optics", "eye", "sky", "field", "session", "hop"],
  lesson: ["celestial", "optics", "eye", "sky", "field", "session", "hop", "score"],
  chart: ["celestial", "optics", "sky"],
  sheet: ["celestial", "optics", "sky", "chart", "hop"],
  learner: ["celestial", "optics", "eye", "sky", "field", "session", "hop", "score", "lesson"],
  rehearsal: ["celestial", "optics", "sky", "field", "session", "chart", "lesson"],
};
const roomRules = Object.entries(mayKnow).map(([room, known]) => ({
  name: `core-${room}`,
  comment: `${room} stands on ${known.join(", ") || "the seams alone"}; look for a room nearer to it, or move the shared part down.`,
  severity: "error",
  from: { path: core(room) },
  to: { path: "^src/core/", pathNot: [...known, room, "seams"].map(core) },
}));

export default {
  forbidden: [
    ...roomRules,
    {
      name: "seams-stand-alone",
      comment: "The seams are types that every room stands on; they know nobody.",
      severity: "error",
      from: { path: "^src/core/seams/" },
      to: { pathNot: "^src/core/seams/" },
    },
    {
      name: "core-is-pure",
      comment: "core takes data in and gives data back; stage, desk and cli draw, ask and store.",
      severity: "error",
      from: { path: "^src/core" },
      to: { path: "^src/(stage|desk|cli|tools)|^(node:|fs|path)|pixi|preact|howler|/idb/" },
    },
    {
      name: "stage-knows-core-only",
      comment: "stage draws what core computed; it decides nothing and knows no page.",
      severity: "error",
      from: { path: "^src/stage" },
      to: { path: "^src/(desk|cli|tools)|preact|howler|/idb/" },
    },
    {
      name: "cli-knows-core-only",
      comment: "a verb runs the code of the page; it has no picture and no astronomy of its own.",
      severity: "error",
      from: { path: "^src/cli" },
      to: { path: "^src/(desk|stage)" },
    },
    { name: "no-cycles", comment: "Two modules that need each other are one, or three.", severity: "error", from: {}, to: { circular: true } },
  ],
  options: { tsPreCompilationDeps: true, tsConfig: { fileName: "tsconfig.json" }, doNotFollow: { path: "node_modules" } },
};
