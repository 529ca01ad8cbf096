/** The page begins: fonts and tokens, what was kept, the first screen. */
import "./styles/fonts.css";
import "./styles/tokens.css";
import "./styles/base.css";
import { render } from "preact";
import { App } from "./app/App.tsx";
import { begin } from "./app/begin.ts";

const root = document.getElementById("faintward");
if (!root) throw new Error("the page has no place for the program");
const desk = await begin();
render(<App desk={desk} />, root);
