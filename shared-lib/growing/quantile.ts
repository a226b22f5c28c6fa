/** The value below which a share of all lies. Sorts a copy. */
export const quantile = (values: readonly number[], share: number): number =>
  Float64Array.from(values).sort()[Math.floor(share * (values.length - 1))] ?? 0;

export const median = (values: readonly number[]): number => quantile(values, 0.5);
