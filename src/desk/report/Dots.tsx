/** One to three dots: how well a lesson was found. */
import "../styles/dots.css";
import { sayReport } from "./words.ts";

export const Dots = ({ stars }: { stars: number }) => (
  <span class="dots">
    <span class="hidden-words">{sayReport("dots", { dots: stars })}</span>
    {[1, 2, 3].map((one) => (
      <span key={one} class={one <= stars ? "dot full" : "dot"} aria-hidden="true" />
    ))}
  </span>
);
