/**
 * Names of the Sallowfell world: made up by us, of no other sky and nobody else's stories. A test holds them against the
 * names of the real sky, and against a list of other works' names.
 */
import { type Chance, shuffled } from "./chance.ts";

const STAR_NAMES = (
  "Orlo Tessim Brannoc Velkin Sumber Ardlow Quenna Hathic Dorrin Fennic Ibbet Jorvel Kettin Lamble Nessop Ottrey Peverin " +
  "Rusket Tansel Umbrel Verrick Wennet Yarrel Zennick Corby Emmick Gathel Hessit Ingram Larkin Mossel Noddy Pellow Ruddle " +
  "Sallis Thornel Wickle Yaddle"
).split(" ");

/** No shape has more names than this. */
const NAMES_OF_A_SHAPE = 16;

const CLUSTER_NAMES = ["Gorse", "Spilt Seed", "Thistledown", "Midges", "Sparks", "Rowanberries"];
const GALAXY_NAMES = ["Breath on the Pane", "Candle Smoke", "Wool on the Fence", "Hill Mist", "Ash on the Sill"];

/** The words of one sky, each used once, in the order in which they are given out. */
export type SkyWords = {
  readonly stars: readonly string[];
  /** The order in which the names of each shape are given to figures: 0 to 15, each once. */
  readonly figureOrder: readonly number[];
  readonly cluster: string;
  readonly galaxy: string;
};

export function drawWords(chance: Chance): SkyWords {
  return {
    stars: shuffled(chance, STAR_NAMES),
    figureOrder: shuffled(
      chance,
      Array.from({ length: NAMES_OF_A_SHAPE }, (_, i) => i),
    ),
    cluster: shuffled(chance, CLUSTER_NAMES)[0]!,
    galaxy: shuffled(chance, GALAXY_NAMES)[0]!,
  };
}
