/**
 * Student's t: the value that a share `p` of the distribution stays below.
 *
 * @param p   0 to 1, both excluded
 * @param df  degrees of freedom, 1 or more
 * @returns  NaN outside these
 * Source: the distribution by the regularised incomplete beta function (continued fraction of Abramowitz and Stegun 26.5.8),
 * solved for its quantile by bisection to the last digits.
 * @example studentT(0.975, 4) // 2.776
 */
export function studentT(p: number, df: number): number {
  if (!(p > 0 && p < 1) || !(df >= 1)) return Number.NaN;
  if (p === 0.5) return 0;
  if (p < 0.5) return -studentT(1 - p, df);
  let [low, high] = [0, 1];
  while (shareBelow(high, df) < p && high < 1e12) high *= 2;
  for (let turn = 0; turn < 200 && high - low > 1e-15 * high; turn += 1) {
    const middle = (low + high) / 2;
    if (shareBelow(middle, df) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Share of the distribution below t, t not negative. */
const shareBelow = (t: number, df: number): number => 1 - incompleteBeta(df / (df + t ** 2), df / 2, 0.5) / 2;

function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta(a, b));
  return x < (a + 1) / (a + b + 2) ? (front * fraction(x, a, b)) / a : 1 - (front * fraction(1 - x, b, a)) / b;
}

/** The continued fraction of the incomplete beta function, by Lentz. */
function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 / (1 - ((a + b) * x) / (a + 1) || tiny);
  let result = d;
  for (let m = 1; m <= 500; m += 1) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / (1 + even * d || tiny);
    c = 1 + even / c || tiny;
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / (1 + odd * d || tiny);
    c = 1 + odd / c || tiny;
    const change = d * c;
    result *= change;
    if (Math.abs(change - 1) < 1e-16) break;
  }
  return result;
}

const logBeta = (a: number, b: number): number => logGamma(a) + logGamma(b) - logGamma(a + b);

/** Lanczos, g = 7, nine terms: fifteen digits for positive arguments. */
const lanczos: readonly number[] = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059,
  12.507343278686905, -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
];

function logGamma(z: number): number {
  if (z < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * z)) - logGamma(1 - z);
  const shifted = z - 1;
  const sum = lanczos.reduce((total, term, index) => total + (index === 0 ? term : term / (shifted + index)), 0);
  const t = shifted + 7.5;
  return 0.5 * Math.log(2 * Math.PI) + (shifted + 0.5) * Math.log(t) - t + Math.log(sum);
}
