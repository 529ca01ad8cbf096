/** The lessons that come along, as their authors wrote them: each comes when it is asked for. */
const TEXTS = import.meta.glob<string>("../../../lessons/*.yaml", { query: "?raw", import: "default" });

/** The text of a lesson by its id, which is its file's name. */
export async function shippedText(lessonId: string): Promise<string> {
  const load = TEXTS[`../../../lessons/${lessonId}.yaml`];
  if (!load) throw new Error(`no lesson ${lessonId} comes along`);
  return load();
}
