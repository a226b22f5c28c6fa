/** One way that a thing may be, its error, and how likely it is beside the others. */
export interface Possible {
  readonly error: number;
  readonly weight: number;
}

/** What makes up a quantity's error, each part independent of the others. */
export interface ErrorParts {
  /** Standard uncertainty of all that is normal, or a sum of many. */
  readonly normalU: number;
  /** Something known to lie within +/- this, anywhere alike. */
  readonly half: number;
  /** One of these comes on top; empty for none. */
  readonly oneOf: readonly Possible[];
}

/** What two standard uncertainties hold of a normal quantity. Source: JCGM 100:2008 (GUM), table G.1. */
const held = 0.954_499_736;

/**
 * Expanded uncertainty for a coverage of 95.45 %: half the width of the interval about the estimate.
 *
 * Of a normal quantity that is k = 2 exactly. Where one part that is not normal outweighs the rest, twice the standard
 * uncertainty would hold far more than it says: an error that is either +d or -d never exceeds d. So the parts'
 * distributions are convolved and the interval is read from the whole, as G.1.4 asks.
 *
 * @returns in the parts' unit; NaN where a part is none
 * Source: JCGM 100:2008 (GUM) 6.3.3, G.1.4 and G.2.2.
 */
export function expandedUncertainty({ normalU, half, oneOf }: ErrorParts): number {
  // Narrow limits beside a normal part can't be told from one more normal part (the fourth moment is off by 0.1 %).
  const isNarrow = half <= 0.3 * normalU;
  const sigma = isNarrow ? Math.hypot(normalU, half / Math.sqrt(3)) : normalU;
  const limits = isNarrow ? 0 : half;
  const offsets = oneOf.length > 0 ? oneOf : [{ error: 0, weight: 1 }];
  const whole = offsets.reduce((sum, { weight }) => sum + weight, 0);
  const farthest = Math.max(...offsets.map(({ error }) => Math.abs(error)));
  if (!Number.isFinite(sigma + limits + farthest)) return Number.NaN;
  if (farthest === 0 && limits === 0) return 2 * sigma;
  let [low, high] = [0, farthest + limits + 2 * sigma];
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    const inside = offsets.reduce(
      (sum, { error, weight }) =>
        sum + weight * (below(middle - error, sigma, limits) - below(-middle - error, sigma, limits)),
      0,
    );
    if (inside < held * whole) low = middle;
    else high = middle;
  }
  return high;
}

/** How often a normal error and one within limits come together to less than `x`. */
function below(x: number, sigma: number, limits: number): number {
  if (limits === 0) return sigma === 0 ? (x >= 0 ? 1 : 0) : normalBelow(x / sigma);
  if (sigma === 0) return Math.min(1, Math.max(0, (x + limits) / (2 * limits)));
  return (sigma * (normalSum((x + limits) / sigma) - normalSum((x - limits) / sigma))) / (2 * limits);
}

/** Integral of `normalBelow`. */
const normalSum = (z: number): number => z * normalBelow(z) + Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);

const erfcTerms = [
  -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587, -0.82215223,
  0.17087277,
];

/** Share of a standard normal quantity below `z`, to 1e-7. Source: Press et al., Numerical Recipes, 2nd ed., 6.2 (erfcc). */
function normalBelow(z: number): number {
  const x = Math.abs(z) / Math.SQRT2;
  const t = 1 / (1 + x / 2);
  const tail = (t * Math.exp(-x * x + erfcTerms.reduceRight((sum, term) => term + t * sum, 0))) / 2;
  return z > 0 ? 1 - tail : tail;
}
