/** Largest less smallest; never negative. */
export const spreadOf = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** The table turned on its side: one list for each direction. */
export const columnsOf = (rows: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  (rows[0] ?? []).map((_, column) => rows.flatMap((row) => row[column] ?? []));

export const meanOf = (values: readonly number[]): number =>
  values.reduce((total, each) => total + each, 0) / values.length;
