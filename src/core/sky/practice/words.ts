/**
 * Names of the Sallowfell world: made up by us, of no other sky and nobody else's stories. A test holds them against the
 * names of the real sky.
 */
import { type Chance, shuffled } from "./chance.ts";

const STAR_NAMES = (
  "Orlo Tessim Brannoc Velkin Sumber Ardlow Quenna Hathic Dorrin Fennic Ibbet Jorvel Kettin Lamble Nessop Ottrey Peverin " +
  "Rusket Tansel Umbrel Verrick Wennet Yarrel Zennick Corby Emmick Gathel Hollin Ingram Larkin Mossel Noddy Pellow Ruddle " +
  "Sallis Thornel Wickle Yaddle"
).split(" ");

export type FigureWord = { readonly abbr: string; readonly name: string };

const FIGURE_NAMES: readonly FigureWord[] = [
  { abbr: "Hrn", name: "Heron" },
  { abbr: "Stl", name: "Stile" },
  { abbr: "Bel", name: "Bellows" },
  { abbr: "Rak", name: "Rake" },
  { abbr: "Ott", name: "Otter" },
  { abbr: "Cur", name: "Curlew" },
  { abbr: "Ldd", name: "Ladder" },
  { abbr: "Anv", name: "Anvil" },
  { abbr: "Spi", name: "Spindle" },
  { abbr: "Skf", name: "Skiff" },
  { abbr: "Thi", name: "Thimble" },
  { abbr: "Bad", name: "Badger" },
  { abbr: "Bwe", name: "Bellwether" },
  { abbr: "Wic", name: "Wicket" },
  { abbr: "Sld", name: "Sledge" },
  { abbr: "Crn", name: "Cairn" },
];

const CLUSTER_NAMES = ["Gorse", "Spilt Seed", "Thistledown", "Midges", "Sparks", "Rowanberries"];
const GALAXY_NAMES = ["Breath on the Pane", "Candle Smoke", "Wool on the Fence", "Hill Mist", "Moth"];

/** The words of one sky, each used once, in the order in which they are given out. */
export type SkyWords = {
  readonly stars: readonly string[];
  readonly figures: readonly FigureWord[];
  readonly cluster: string;
  readonly galaxy: string;
};

export function drawWords(chance: Chance): SkyWords {
  return {
    stars: shuffled(chance, STAR_NAMES),
    figures: shuffled(chance, FIGURE_NAMES),
    cluster: shuffled(chance, CLUSTER_NAMES)[0]!,
    galaxy: shuffled(chance, GALAXY_NAMES)[0]!,
  };
}
