/** A catalogue of one's own, read as a stream, to the tile files of a sky. */
import { pixelOf } from "#core/celestial/healpix.ts";
import { InputError } from "#core/seams/errors.ts";
import { createStarStore } from "../build/starStore.ts";
import { createTally } from "../build/tally.ts";
import { tileFiles } from "../build/tiles.ts";
import { layerOf } from "../catalogue/layers.ts";
import { MAX_TILE_STARS } from "../catalogue/tileFormat.ts";
import { createNameKeeper } from "./ownNames.ts";
import { readCsv } from "./readCsv.ts";
import { readVotable } from "./readVotable.ts";
import { rowStar } from "./rowStar.ts";
import type { Columns, CountedBy, FormatReader, Imported, RowFault, RowSink } from "./types.ts";

const MOST_ROWS = 1_000_000;
const FAULTS_TOLD = 100;
/** Tiles split down to this order hold no more stars than one can, however many lie in one place. */
const CROWD_ORDER = 8;
const DEFAULT_EPOCH = 2000;
/**
 * What a file of text does not begin with: a control sign, as gzip's first byte is (RFC 1952, section 2.3.1), or bytes that are
 * no UTF-8, as the mark at the beginning of UTF-16 is.
 */
const NO_TEXT = /^[\p{Cc}\uFFFD]/u;

export type StarImport = {
  /** A piece of the file's text, cut anywhere. Throws InputError where the file as a whole is no good. */
  readonly push: (text: string) => void;
  readonly rows: () => number;
  /** After the last piece: the files. Throws InputError where the file is cut off or holds no star. */
  readonly finish: () => Imported;
};

/** Begins an import; what the file is shows in its first character that is no blank. The same text gives the same files. */
export function startImport(): StarImport {
  const store = createStarStore();
  const names = createNameKeeper();
  const dropped = createTally();
  const first: RowFault[] = [];
  const crowd = new Uint16Array(12 << (2 * CROWD_ORDER));
  let columns: Columns = {};
  let epoch = DEFAULT_EPOCH;
  let countedBy: CountedBy = "line";
  let bad = 0;
  let rows = 0;
  let reader: FormatReader | undefined;
  let beginning = "";

  const countRow = () => {
    rows += 1;
    if (rows > MOST_ROWS)
      throw new InputError("The file holds over 1,000,000 rows", "Leave out the faintest stars, or part of the sky.");
  };
  const fault = (one: RowFault) => {
    countRow();
    bad += 1;
    dropped.add(one.what);
    if (first.length < FAULTS_TOLD) first.push(one);
  };
  const sink: RowSink = {
    columns(found, epochYear, by) {
      columns = found;
      countedBy = by;
      epoch = epochYear ?? DEFAULT_EPOCH;
    },
    row(cells, line) {
      const star = rowStar(cells, columns, epoch);
      if ("what" in star) return fault({ line, ...star });
      countRow();
      if (!layerOf(star.centiMag)) return dropped.add("fainter than V 12.5");
      const cell = pixelOf(CROWD_ORDER, star.dir);
      if (crowd[cell]! >= MAX_TILE_STARS) return dropped.add("more stars in one place than a tile holds");
      crowd[cell] = crowd[cell]! + 1;
      store.add(star.dir, star.centiMag, star.colourBV);
      names.add(star.name, star.dir, star.centiMag);
    },
    fault,
  };
  return {
    push(text) {
      if (reader) return reader.push(text);
      beginning = (beginning + text).replace(/^\uFEFF/, "");
      const head = beginning.trimStart();
      if (head === "") return;
      if (NO_TEXT.test(head))
        throw new InputError("The file is no plain text", "Unpack it first if it is packed, and save it as UTF-8.");
      reader = head.startsWith("<") ? readVotable(sink) : readCsv(sink);
      reader.push(beginning);
      beginning = "";
    },
    rows: () => rows,
    finish() {
      if (!reader) throw new InputError("The file is empty", "Give a CSV file with a header row, or a VOTable.");
      reader.finish();
      const stars = store.columns();
      if (stars.count === 0)
        throw new InputError(
          `No star could be read from ${rows} rows${first[0] ? `; ${countedBy} ${first[0].line}: ${first[0].what}` : ""}`,
          first[0]?.hint ?? "Give rows with right ascension, declination and magnitude.",
        );
      const { file, ...counts } = names.finish();
      return {
        files: [...tileFiles(stars), ...(file ? [file] : [])],
        stars: stars.count,
        names: counts,
        dropped: dropped.list(),
        badRows: { count: bad, countedBy, first },
      };
    },
  };
}
