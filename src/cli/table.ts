/** Columns of text, each as wide as its widest entry; numbers to the right, words to the left. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const all = [head, ...rows];
  const widths = head.map((_, column) => all.reduce((most, row) => Math.max(most, (row[column] ?? "").length), 0));
  const isNumber = head.map((_, column) => rows.every((row) => /^[-+]?[\d.]*$/.test(row[column] ?? "")));
  const line = (row: readonly string[]) =>
    widths
      .map((width, column) =>
        isNumber[column] ? (row[column] ?? "").padStart(width) : (row[column] ?? "").padEnd(width),
      )
      .join("  ")
      .trimEnd();
  return all.map(line).join("\n");
}

/** A list of names and values. */
export const pairs = (rows: readonly (readonly [name: string, value: string])[]): string => {
  const width = Math.max(...rows.map(([name]) => name.length));
  return rows.map(([name, value]) => `${name.padEnd(width)}  ${value}`).join("\n");
};
