/** A file's bytes, as they come, to the tile files of a sky. */
import { startImport } from "#core/sky/import/importStars.ts";
import type { Imported } from "#core/sky/import/types.ts";
import type { Progress } from "./messages.ts";

/** Between two words of progress. */
const TELL_EVERY_MS = 100;

/** The file's bytes could not be had: it was moved, changed or taken away while it was read. */
export class UnreadableFile extends Error {
  override readonly name = "UnreadableFile";
}

const nextPiece = async (reader: ReadableStreamDefaultReader<Uint8Array>) => {
  try {
    return await reader.read();
  } catch (error) {
    throw new UnreadableFile(error instanceof Error ? error.message : String(error));
  }
};

/**
 * Reads a CSV or VOTable as a stream.
 * @param nowMs a clock, for how often progress is told
 * @throws InputError where the file as a whole is no good, UnreadableFile where its bytes do not come
 */
export async function readStars(
  file: Pick<File, "size" | "stream">,
  tell: (progress: Progress) => void,
  nowMs: () => number,
): Promise<Imported & { readonly rows: number }> {
  const work = startImport();
  const decoder = new TextDecoder();
  const reader = file.stream().getReader();
  let doneBytes = 0;
  let toldMs = Number.NEGATIVE_INFINITY;
  const now = (stage: Progress["stage"]) => tell({ stage, rows: work.rows(), doneBytes, ofBytes: file.size });
  for (let piece = await nextPiece(reader); !piece.done; piece = await nextPiece(reader)) {
    work.push(decoder.decode(piece.value, { stream: true }));
    doneBytes += piece.value.length;
    if (nowMs() - toldMs < TELL_EVERY_MS) continue;
    toldMs = nowMs();
    now("reading");
  }
  work.push(decoder.decode());
  now("sorting");
  const imported = work.finish();
  now("keeping");
  return { ...imported, rows: work.rows() };
}
