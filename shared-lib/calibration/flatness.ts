import type { XY } from '../geometry/spaces.ts';
import { type Ellipse, fitEllipse } from './ellipse.ts';
import { scaledBessel } from './scaled-bessel.ts';

const grid = 240;

/**
 * How flat an ellipse may truly be that was clicked to look this flat: clicking makes a round rim look flat and never
 * rounder than round, so one that is as flat as clicking makes it may as well be a circle.
 *
 * Flatness and direction together, as a vector of twice the angle, err as a normal quantity of two dimensions; every
 * direction of the plane was as likely before.
 *
 * @param rim  the clicks `ellipse` was fitted to, `clickingPx` the standard uncertainty of each
 * @param count  how many are wanted
 * @returns ellipses of the same size and direction, each as likely as the next, the roundest first
 * Source of the density: Rice, Mathematical analysis of random noise, Bell System Technical Journal 24 (1945), 3.10.
 */
export function possibleEllipses(
  ellipse: Ellipse,
  rim: readonly XY[],
  clickingPx: number,
  count: number,
): readonly Ellipse[] {
  const flat = flatnessOf(ellipse);
  const u = flatnessU(ellipse, rim, clickingPx);
  const [from, to] = [Math.max(0, flat - 5 * u), Math.min(0.999, flat + 5 * u)];
  const step = (to - from) / grid;
  const cells = Array.from({ length: grid }, (_, k) => from + (k + 0.5) * step);
  const weights = cells.map((r) => Math.exp(-((r - flat) ** 2) / (2 * u * u)) * scaledBessel((r * flat) / (u * u)));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  let [passed, at] = [0, 0];
  return Array.from({ length: count }, (_, k) => {
    const wanted = ((k + 0.5) / count) * whole;
    while (at < grid - 1 && passed + (weights[at] ?? 0) < wanted) {
      passed += weights[at] ?? 0;
      at += 1;
    }
    return withFlatness(ellipse, u > 0 ? (cells[at] ?? flat) : flat);
  });
}

/** 0 for a circle, towards 1 for a line. */
const flatnessOf = ({ semiMajor, semiMinor }: Ellipse): number => (semiMajor - semiMinor) / (semiMajor + semiMinor);

function withFlatness(ellipse: Ellipse, flat: number): Ellipse {
  const mean = (ellipse.semiMajor + ellipse.semiMinor) / 2;
  return { ...ellipse, semiMajor: mean * (1 + flat), semiMinor: mean * (1 - flat) };
}

/** Standard uncertainty of the flatness along any one direction, from every click's share in the fit (GUM 5.1.2). */
function flatnessU(ellipse: Ellipse, rim: readonly XY[], clickingPx: number): number {
  const step = 1e-3 * ellipse.semiMinor;
  const vector = (points: readonly XY[]): XY => {
    const fitted = fitEllipse(points) ?? ellipse;
    const flat = flatnessOf(fitted);
    return { x: flat * Math.cos(2 * fitted.angle), y: flat * Math.sin(2 * fitted.angle) };
  };
  let squares = 0;
  for (const [k, { x, y }] of rim.entries()) {
    for (const [dx, dy] of [
      [step, 0],
      [0, step],
    ] as const) {
      const up = vector(rim.with(k, { x: x + dx, y: y + dy }));
      const down = vector(rim.with(k, { x: x - dx, y: y - dy }));
      squares += ((up.x - down.x) ** 2 + (up.y - down.y) ** 2) / (4 * step * step);
    }
  }
  return clickingPx * Math.sqrt(squares / 2);
}
