/** A plain classifier: logistic regression by gradient descent over standardised figures. */

/** Gives, for figures, how likely they belong to the true class. */
export function trainLogistic(rows: readonly number[][], labels: readonly boolean[]): (row: number[]) => number {
  const width = rows[0]!.length;
  const columns = Array.from({ length: width }, (_, j) => rows.map((row) => row[j]!));
  const means = columns.map((column) => column.reduce((sum, x) => sum + x, 0) / rows.length);
  const spreads = columns.map((column, j) =>
    Math.sqrt(column.reduce((sum, x) => sum + (x - means[j]!) ** 2, 0) / rows.length || 1),
  );
  const scaled = (row: readonly number[]) => row.map((x, j) => (x - means[j]!) / spreads[j]!);
  const weights = new Array<number>(width + 1).fill(0);
  const likely = (row: readonly number[]) =>
    1 / (1 + Math.exp(-row.reduce((sum, x, j) => sum + x * weights[j]!, weights[width]!)));
  const inputs = rows.map(scaled);
  for (let round = 0; round < 400; round++) {
    const slope = new Array<number>(width + 1).fill(0);
    for (const [i, row] of inputs.entries()) {
      const off = likely(row) - (labels[i] ? 1 : 0);
      for (let j = 0; j < width; j++) slope[j]! += off * row[j]!;
      slope[width]! += off;
    }
    for (let j = 0; j <= width; j++) weights[j]! -= (0.5 * slope[j]!) / rows.length;
  }
  return (row) => likely(scaled(row));
}
