/**
 * Straight line between the rows of a table.
 *
 * @param rows  at least two, rising in their first number
 * @returns  the end rows' values outside the table
 */
export function lookUp(rows: readonly (readonly [at: number, value: number])[], at: number): number {
  const [first, last] = [rows[0], rows.at(-1)];
  if (first === undefined || last === undefined) return Number.NaN;
  if (at <= first[0]) return first[1];
  for (const [index, [x1, y1]] of rows.entries()) {
    const [x0, y0] = rows[index - 1] ?? [x1, y1];
    if (at <= x1) return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0);
  }
  return last[1];
}
