/** Builds the page that lays fields beside each other. */
import { fileURLToPath } from "node:url";
import { defineConfig } from "vite";
import stage from "../stage/vite.config.ts";

export default defineConfig({ ...stage, root: fileURLToPath(new URL(".", import.meta.url)) });
