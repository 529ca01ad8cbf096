/** Edits (insert, delete, replace, swap of neighbours) that part two words. */
function editsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    const last = rows[i - 1]!;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        least = Math.min(least, rows[i - 2]![j - 2]! + 1);
      row.push(least);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}

/** The known word that a mistyped one most likely means: at most a third of its letters differ; undefined where none is near. */
export function nearestWord(word: string, known: Iterable<string>): string | undefined {
  if (word.length > 60) return undefined;
  const typed = word.toLowerCase();
  let best: string | undefined;
  let bestEdits = Math.max(1, Math.floor(word.length / 3)) + 1;
  for (const candidate of known) {
    if (Math.abs(candidate.length - word.length) >= bestEdits) continue;
    const edits = editsBetween(typed, candidate.toLowerCase());
    if (edits < bestEdits) {
      best = candidate;
      bestEdits = edits;
    }
  }
  return best;
}
