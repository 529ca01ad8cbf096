/** `npm start`: installs what is missing, builds, serves, prints the address. */
import { ensureBuilt } from "./build.mjs";
import { at, ensurePackages } from "./run.mjs";
import { serve } from "./serve.mjs";

try {
  await ensurePackages();
  await ensureBuilt();
  const { port } = await serve(at("dist", "page"), Number(process.env.PORT ?? 4180));
  console.log(`Faintward is at http://localhost:${port}/ (Ctrl+C ends it)`);
} catch (error) {
  console.error(error.message);
  process.exitCode = 1;
}
