/** Serves the built page at one port, for the browser tests: `node src/tools/servePage.mjs PORT`. */
import { at } from "./run.mjs";
import { serve } from "./serve.mjs";

const wanted = Number(process.argv[2]);
const { port } = await serve(at("dist", "page"), wanted);
if (port !== wanted) throw new Error(`port ${wanted} is taken`);
