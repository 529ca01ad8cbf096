/** Figures that every engine must agree on to the last bit: exact mathematics, tiles, limits of the eye, compiled attempts, scores. */
import { exactMathGolden } from "#core/celestial/golden.ts";
import { fnv1a32 } from "#core/celestial/hash.ts";
import { toHopSpec } from "#core/lesson/hopSpec.ts";
import { skyLookups } from "#core/lesson/skyLookups.ts";
import { score } from "#core/score/report.ts";
import { decodeRecord, encodeRecord } from "#core/session/record.ts";
import { decodeTileFile } from "#core/sky/catalogue/decodeTileFile.ts";
import { hashOfBlock, practiceGolden } from "#core/sky/practice/golden.ts";
import { seedLessonOf } from "../../../src/desk/seed/seedLessons.ts";
import { type Files, LESSONS, lessonCase, told } from "../../unit/desk/workerCases.ts";
import { limitGrid, marginGrid } from "./seeing.ts";

const DAYS = ["daily-2026-11-25", "daily-2026-11-26", "daily-2028-02-29"];
const TILES = "stars-0.bin";
const hashOfText = (text: string): number => fnv1a32(new TextEncoder().encode(text));

/** Records as another engine wrote them, by lesson. */
export type Records = Readonly<Record<string, string>>;

/** Records of the lessons, played here. */
export async function playedRecords(files: Files): Promise<Records> {
  const records: Record<string, string> = {};
  for (const id of LESSONS) records[id] = encodeRecord((await lessonCase(id, files)).record);
  return records;
}

/** @param records scored again here, whoever played them */
export async function goldenFigures(files: Files, records: Records): Promise<Record<string, number>> {
  const { blocks } = decodeTileFile(new Uint8Array(await files.sky(TILES)), TILES);
  const figures: Record<string, number> = {
    exactMath: exactMathGolden(),
    practiceTiles: practiceGolden(),
    catalogueTiles: blocks.reduce<number | undefined>((hash, block) => hashOfBlock(block, hash), undefined) ?? 0,
    limits: hashOfText(limitGrid().join()),
    margins: hashOfText(marginGrid().join()),
  };
  for (const id of DAYS) figures[id] = hashOfText(told(toHopSpec(seedLessonOf(id)!, 0, skyLookups)));
  for (const id of LESSONS) {
    const { compiled } = await lessonCase(id, files);
    const record = decodeRecord(records[id] ?? "");
    figures[`compiled ${id}`] = hashOfText(told(compiled));
    figures[`record ${id}`] = hashOfText(encodeRecord(record));
    figures[`score ${id}`] = hashOfText(told(score(record)));
  }
  return figures;
}
