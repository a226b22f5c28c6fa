export interface InputQuantity {
  readonly value: number;
  /** Standard uncertainty. */
  readonly u: number;
  /** Degrees of freedom; infinite where the uncertainty is not itself estimated from few readings. */
  readonly degrees?: number;
}

export interface Propagated {
  readonly value: number;
  /** Combined standard uncertainty. */
  readonly u: number;
  /** |sensitivity| times standard uncertainty, per input. */
  readonly shares: readonly number[];
  /** Effective degrees of freedom (Welch and Satterthwaite). */
  readonly degrees: number;
}

/**
 * Law of propagation of uncertainty for uncorrelated inputs, sensitivities by central differences over one standard
 * uncertainty each way.
 * Source: JCGM 100:2008 (GUM) 5.1.2, 5.1.3 note 2, and G.4.1 for the degrees of freedom.
 */
export function propagate(f: (values: readonly number[]) => number, inputs: readonly InputQuantity[]): Propagated {
  const values = inputs.map(({ value }) => value);
  const shares = inputs.map(({ value, u }, i) =>
    u === 0 ? 0 : Math.abs(f(values.with(i, value + u)) - f(values.with(i, value - u))) / 2,
  );
  const u = Math.hypot(...shares);
  const weights = shares.reduce(
    (sum, share, i) => sum + share ** 4 / (inputs[i]?.degrees ?? Number.POSITIVE_INFINITY),
    0,
  );
  return { value: f(values), u, shares, degrees: weights === 0 ? Number.POSITIVE_INFINITY : u ** 4 / weights };
}

/** Standard uncertainty of a quantity known to lie within +/- `half`, anywhere alike. Source: GUM 4.3.7. */
export function fromLimits(half: number): number {
  return half / Math.sqrt(3);
}

/** The other way: the limits that a standard uncertainty was made of. */
export function toLimits(u: number): number {
  return u * Math.sqrt(3);
}
