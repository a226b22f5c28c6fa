/** exp(-x) I0(x), to 1e-6. Source: Abramowitz and Stegun, 9.8.1 and 9.8.2. */
export function scaledBessel(x: number): number {
  if (x < 3.75) {
    const t = (x / 3.75) ** 2;
    return Math.exp(-x) * polynomial([1, 3.5156229, 3.0899424, 1.2067492, 0.2659732, 0.0360768, 0.0045813], t);
  }
  const terms = [
    0.39894228, 0.01328592, 0.00225319, -0.00157565, 0.00916281, -0.02057706, 0.02635537, -0.01647633, 0.00392377,
  ];
  return polynomial(terms, 3.75 / x) / Math.sqrt(x);
}

const polynomial = (terms: readonly number[], t: number): number => terms.reduceRight((sum, term) => term + t * sum, 0);
