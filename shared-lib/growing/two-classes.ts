/** Values that fall into a low and a high class. */
export interface TwoClasses {
  /** Between the two. */
  readonly level: number;
  /** How far the classes' means lie apart, in scatters within them. */
  readonly apart: number;
}

/** Fewer values have no classes. */
const fewest = 30;

/**
 * Source: Otsu, A threshold selection method from gray-level histograms (1979): the level at which the variance between
 * the classes is largest, here over the values themselves.
 */
export function twoClasses(values: readonly number[]): TwoClasses | null {
  const count = values.length;
  if (count < fewest) return null;
  const sorted = Float64Array.from(values).sort();
  let [sum, squares] = [0, 0];
  for (const value of sorted) {
    sum += value;
    squares += value * value;
  }
  let [low, most, at, difference] = [0, -1, 0, 0];
  for (let lows = 1; lows < count; lows += 1) {
    low += sorted[lows - 1] as number;
    const step = (sum - low) / (count - lows) - low / lows;
    const between = lows * (count - lows) * step * step;
    if (between > most) [most, at, difference] = [between, lows, step];
  }
  const total = squares - (sum * sum) / count;
  const within = Math.sqrt(Math.max(0, total - most / count) / count);
  return { level: ((sorted[at - 1] as number) + (sorted[at] as number)) / 2, apart: difference / (within + 1e-9) };
}
