/** A value with its expanded uncertainty, both in one unit. */
export interface Measured {
  readonly value: number;
  /** For a coverage of 95 %: k = 2 of a normal quantity. */
  readonly expanded: number;
}

/** Digits after the point that an uncertainty deserves: two figures where it begins with 1 or 2, else one. */
export function uncertaintyDecimals(expanded: number): number {
  if (!(expanded > 0)) return 3;
  const exponent = Math.floor(Math.log10(expanded) + 1e-12);
  const lead = Number((expanded / 10 ** exponent).toPrecision(2));
  return (lead < 2.95 ? 1 : 0) - exponent;
}

/**
 * `38.4 \u00b1 0.9 mm`: the uncertainty to at most two figures, the value to the same place.
 * Source: GUM 7.2.6 (figures of an uncertainty, and of the estimate to match).
 */
export function showMeasured({ value, expanded }: Measured, unit: string): string {
  const decimals = uncertaintyDecimals(expanded);
  const round = (x: number): string =>
    decimals >= 0 ? x.toFixed(decimals) : String(Math.round(x / 10 ** -decimals) * 10 ** -decimals);
  return `${round(value)} \u00b1 ${round(expanded)} ${unit}`;
}
