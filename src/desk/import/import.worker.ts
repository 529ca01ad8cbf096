/** Takes a catalogue in beside the page. It is ended from outside: whatever was not written whole by then is not there. */
import { InputError } from "#core/seams/errors.ts";
import { plainErrorOf } from "../workers/errors.ts";
import type { Task, Told } from "./messages.ts";
import { keepOwn, openOwnBase } from "./ownBase.ts";
import { readStars, UnreadableFile } from "./readStars.ts";

const tell = (told: Told) => postMessage(told);

const whyOf = (error: unknown): (Told & { kind: "failed" })["why"] => {
  if (error instanceof InputError) return "file";
  if (error instanceof UnreadableFile) return "unreadable";
  return error instanceof DOMException && error.name === "QuotaExceededError" ? "full" : "other";
};

async function takeIn({ file, id }: Task): Promise<void> {
  const base = await openOwnBase();
  const { files, ...told } = await readStars(
    file,
    (progress) => tell({ kind: "progress", progress }),
    () => performance.now(),
  );
  await keepOwn(base, { ...told, id, fileName: file.name, takenAtMs: Date.now() }, files);
}

addEventListener("message", ({ data }: MessageEvent<Task>) => {
  takeIn(data).then(
    () => tell({ kind: "done" }),
    (error: unknown) => tell({ kind: "failed", why: whyOf(error), error: plainErrorOf(error) }),
  );
});
