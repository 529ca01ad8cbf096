/** Files of the machine, read with care. */
import { mkdir, open, readFile, stat } from "node:fs/promises";
import { dirname, join } from "node:path";
import { UsageError } from "./usageError.ts";

/** A refusal to read as an error that can be mended. */
export const unreadable = (path: string, error: unknown): UsageError =>
  new UsageError("FILE", `${path} cannot be read: ${reasonOf(error)}`, "check the path", { file: path });

const reasonOf = (error: unknown) => {
  const { code } = error as NodeJS.ErrnoException;
  return code === "ENOENT"
    ? "there is no such file"
    : code === "EISDIR"
      ? "it is a folder"
      : code === "EACCES"
        ? "it may not be read"
        : String(code ?? error);
};

/**
 * A text file in UTF-8; where it is longer than `mostBytes`, its beginning up to one byte more, so that a check of the size
 * fails while a huge file costs nothing. Bytes that are no UTF-8 come as U+FFFD, a byte order mark
 * at the beginning is left out.
 * @throws UsageError where the file cannot be read
 */
export async function readText(path: string, mostBytes: number): Promise<string> {
  try {
    const handle = await open(path, "r");
    try {
      const buffer = Buffer.alloc(mostBytes + 1);
      let length = 0;
      for (;;) {
        const { bytesRead } = await handle.read(buffer, length, buffer.length - length, length);
        length += bytesRead;
        if (bytesRead === 0 || length === buffer.length) break;
      }
      return buffer.toString("utf8", 0, length).replace(/^\uFEFF/, "");
    } finally {
      await handle.close();
    }
  } catch (error) {
    throw unreadable(path, error);
  }
}

/**
 * Makes a folder and those above it that are missing. Rejects where the machine refuses. Node's own `recursive` is not used:
 * under a root that takes no folders and calls them missing, as /proc does, it tries for ever (Node 20.20).
 */
export async function makeFolder(folder: string): Promise<void> {
  try {
    await mkdir(folder);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === "ENOENT" && dirname(folder) !== folder) {
      await makeFolder(dirname(folder));
      await mkdir(folder);
    } else if (!(await isFolder(folder))) throw error;
  }
}

const isFolder = (path: string) =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** Fetches a file of the catalogue sky for its star source. */
export const skyFileFetcher =
  (root: string) =>
  async (name: string, signal: AbortSignal): Promise<ArrayBuffer> => {
    const bytes = await readFile(join(root, "assets", "sky", name), { signal });
    return bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength) as ArrayBuffer;
  };
