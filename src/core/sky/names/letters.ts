/** Greek letters and raised numbers, between data ("gamma2"), chart ("γ²") and what people type. */
const GREEK: ReadonlyMap<string, string> = new Map([
  ["alpha", "α"],
  ["beta", "β"],
  ["gamma", "γ"],
  ["delta", "δ"],
  ["epsilon", "ε"],
  ["zeta", "ζ"],
  ["eta", "η"],
  ["theta", "θ"],
  ["iota", "ι"],
  ["kappa", "κ"],
  ["lambda", "λ"],
  ["mu", "μ"],
  ["nu", "ν"],
  ["xi", "ξ"],
  ["omicron", "ο"],
  ["pi", "π"],
  ["rho", "ρ"],
  ["sigma", "σ"],
  ["tau", "τ"],
  ["upsilon", "υ"],
  ["phi", "φ"],
  ["chi", "χ"],
  ["psi", "ψ"],
  ["omega", "ω"],
]);
/** Other shapes of the signs (and raised digits) fall together under compatibility decomposition; the final sigma does not. */
const NAME_OF_SIGN: ReadonlyMap<string, string> = new Map([
  ...[...GREEK].map(([name, sign]): [string, string] => [sign, name]),
  ["ς", "sigma"],
]);
const RAISED = "⁰¹²³⁴⁵⁶⁷⁸⁹";

/** A letter of the data as a chart shows it: "gamma2" gives "γ²"; a Latin letter stays. */
export function signOfLetter(letter: string): string {
  const [, word = letter, number = ""] = /^([a-z]{2,})(\d*)$/.exec(letter) ?? [];
  const raised = [...number].map((digit) => RAISED[Number(digit)]).join("");
  return `${GREEK.get(word) ?? word}${raised}`;
}

/**
 * A name brought to the form in which names are compared: small Latin letters and digits alone, Greek signs spelled out,
 * raised digits lowered, accents, spaces and punctuation dropped. "γ² Sgr" and "Gamma-2 SGR" both give "gamma2sgr".
 */
export function plainName(text: string): string {
  let plain = "";
  for (const sign of text.normalize("NFKD").toLowerCase()) plain += NAME_OF_SIGN.get(sign) ?? sign;
  return plain.replace(/[^a-z0-9]/g, "");
}

/** Plain letter words of a designation cut to three letters, as it is often typed: "gamma2" gives "gam2". */
export function shortLetter(letter: string): string {
  return letter.replace(/^([a-z]{3})[a-z]+/, "$1");
}

/** Other ways to write a list's name before its number, and the way of the tables. */
const LIST_WORDS: Readonly<Record<string, string>> = {
  messier: "m",
  barnard: "b",
  mel: "melotte",
  cr: "collinder",
  tr: "trumpler",
};

/** Lists whose numbers are written with zeros before them in some tables. */
const LISTS: ReadonlySet<string> = new Set(["ngc", "ic", "hip", ...Object.values(LIST_WORDS)]);

/**
 * A plain name with the list of its number written as in the tables: "messier31" gives "m31", "mel25" "melotte25",
 * "ngc0224" "ngc224".
 */
export function plainDesignation(plain: string): string {
  const [, word = "", number = ""] = /^([a-z]+)0*(\d+)$/.exec(plain) ?? [];
  const list = Object.hasOwn(LIST_WORDS, word) ? LIST_WORDS[word]! : word;
  return LISTS.has(list) ? `${list}${number}` : plain;
}
