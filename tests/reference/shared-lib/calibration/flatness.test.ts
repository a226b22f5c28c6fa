import { describe, expect, it, test } from 'vitest';
import type { Ellipse } from '../../../../shared-lib/calibration/ellipse.ts';
import { possibleEllipses } from '../../../../shared-lib/calibration/flatness.ts';
import { scaledBessel } from '../../../../shared-lib/calibration/scaled-bessel.ts';

describe('exp(-x) I0(x)', () => {
  // I0 as tables of modified Bessel functions print it (Abramowitz and Stegun, table 9.8, and its series 9.6.12).
  it.each([
    [0, 1],
    [0.5, 1.0634833707],
    [1, 1.2660658778],
    [2, 2.2795853023],
    [3, 4.8807925859],
    [5, 27.2398718236],
    [10, 2815.716628],
  ])('at %d, I0 = %d', (x, value) => {
    expect(scaledBessel(x) / (Math.exp(-x) * value)).toBeCloseTo(1, 5);
  });

  it('equals its own series, I0 = Σ (x²/4)^k / k!², on both sides of where the formula changes', () => {
    for (let x = 0; x <= 15; x += 0.25) {
      let [term, sum] = [1, 1];
      for (let k = 1; k < 80; k += 1) {
        term *= x ** 2 / 4 / k ** 2;
        sum += term;
      }
      expect(Math.abs(scaledBessel(x) - Math.exp(-x) * sum)).toBeLessThan(1e-6);
    }
  });
});

const ellipse = (flat: number, angle = 0.3): Ellipse => ({
  centre: { x: 900, y: 700 },
  semiMajor: 200 * (1 + flat),
  semiMinor: 200 * (1 - flat),
  angle,
});
const rimOf = ({ centre, semiMajor, semiMinor, angle }: Ellipse, count: number) =>
  Array.from({ length: count }, (_, k) => {
    const t = (2 * Math.PI * k) / count;
    const [u, v] = [semiMajor * Math.cos(t), semiMinor * Math.sin(t)];
    return {
      x: centre.x + u * Math.cos(angle) - v * Math.sin(angle),
      y: centre.y + u * Math.sin(angle) + v * Math.cos(angle),
    };
  });
const flatnessOf = ({ semiMajor, semiMinor }: Ellipse) => (semiMajor - semiMinor) / (semiMajor + semiMinor);

/**
 * A click errs along the radius by u; the second harmonic of n clicks round a circle errs by u × root(2/n) (least squares on
 * an even grid), and flatness is that harmonic against the radius.
 */
const clicks = 16;
const clickingPx = 2;
const u = (clickingPx / 200) * Math.sqrt(2 / clicks);

test('of a rim that looks round, flatness lies like half a normal curve', () => {
  const seen = ellipse(0);
  const possible = possibleEllipses(seen, rimOf(seen, clicks), clickingPx, 5).map(flatnessOf);
  // Quantiles of the normal curve for 0.55, 0.65, 0.75, 0.85 and 0.95 (any table of it).
  for (const [k, z] of [0.12566, 0.38532, 0.67449, 1.03643, 1.64485].entries()) {
    expect(Math.abs((possible[k] ?? Number.NaN) / u - z)).toBeLessThan(0.03);
  }
});

test.each([1, 2, 4])('of a rim as flat as %d times what clicking does, as the density of Rice says', (times) => {
  const flat = times * u;
  const seen = ellipse(flat);
  const possible = possibleEllipses(seen, rimOf(seen, clicks), clickingPx, 5).map(flatnessOf);
  // The density over the flatness r, in units of u: exp(-(r² + f²)/2) I0(r f), by its series, integrated in small steps.
  const step = 0.002;
  const density = (r: number) => {
    const x = r * times;
    let [term, sum] = [1, 1];
    for (let k = 1; k < 120; k += 1) {
      term *= x ** 2 / 4 / k ** 2;
      sum += term;
    }
    return Math.exp(-(r ** 2 + times ** 2) / 2) * sum;
  };
  const grid = Array.from({ length: Math.round((times + 6) / step) }, (_, k) => (k + 0.5) * step);
  const whole = grid.reduce((sum, r) => sum + density(r), 0);
  for (const [k, share] of [0.1, 0.3, 0.5, 0.7, 0.9].entries()) {
    let passed = 0;
    const wanted = grid.find((r) => {
      passed += density(r);
      return passed >= share * whole;
    });
    expect(Math.abs((possible[k] ?? Number.NaN) / u - (wanted ?? Number.NaN))).toBeLessThan(0.06);
  }
});

test('the size and the way it lies stay, and without any doubt the ellipse itself', () => {
  const seen = ellipse(0.2);
  for (const each of possibleEllipses(seen, rimOf(seen, clicks), clickingPx, 5)) {
    expect(each.semiMajor + each.semiMinor).toBeCloseTo(400, 9);
    expect(each).toMatchObject({ centre: seen.centre, angle: seen.angle });
    expect(Math.abs(flatnessOf(each) - 0.2)).toBeLessThan(3 * u);
  }
  for (const each of possibleEllipses(seen, rimOf(seen, clicks), 0, 5)) expect(flatnessOf(each)).toBeCloseTo(0.2, 9);
});
