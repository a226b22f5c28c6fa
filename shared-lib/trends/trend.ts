import { fitLine, type Line, type Point } from './line.ts';
import { whenReached } from './when-reached.ts';

/** One reading of a series: true hours of the machine and the value. */
export interface SeriesReading {
  readonly hours: number;
  readonly value: number;
}

export type HoursToLimit =
  | { readonly state: 'told'; readonly hours: number; readonly from: number; readonly to: number }
  | { readonly state: 'past it' }
  | { readonly state: 'moves away' }
  | { readonly state: 'cannot be told'; readonly why: string };

export interface Trend {
  /** Readings since the last change of part, earliest first; only these are used. */
  readonly used: readonly SeriesReading[];
  /** How many stand before a change of part and take no part. */
  readonly leftOut: number;
  readonly line: Line | null;
  /** Change for each hour; a straight difference with two readings, null with fewer. */
  readonly perHour: number | null;
  /** Whether the change differs from nothing at the confidence asked; null where the readings cannot say. */
  readonly growing: boolean | null;
}

/**
 * The straight trend of a series of readings against true hours.
 *
 * @param changedAtHours  when the part was changed: a new part begins a new series, nothing is compared across it
 */
export function trendOf(
  readings: readonly SeriesReading[],
  changedAtHours: readonly number[] = [],
  confidence = 0.95,
): Trend {
  const sorted = [...readings].sort((a, b) => a.hours - b.hours);
  const latest = sorted.at(-1)?.hours ?? 0;
  const lastChange = Math.max(Number.NEGATIVE_INFINITY, ...changedAtHours.filter((hours) => hours <= latest));
  const used = sorted.filter(({ hours }) => hours >= lastChange);
  const line = fitLine(used.map(({ hours, value }): Point => ({ x: hours, y: value })));
  return {
    used,
    leftOut: sorted.length - used.length,
    line,
    perHour: line?.slope ?? null,
    growing:
      line === null || line.residualSd === null ? null : whenReached(line, line.meanY, confidence).state === 'told',
  };
}

/** Hours from the latest reading until the line meets a limit, as an interval. */
export function hoursToLimit(
  trend: Trend,
  limit: { readonly max: number } | { readonly min: number },
  confidence = 0.95,
): HoursToLimit {
  const { line, used } = trend;
  const last = used.at(-1);
  const readings = used.length === 1 ? '1 reading' : `${used.length} readings`;
  if (line === null || last === undefined) return { state: 'cannot be told', why: `cannot be told from ${readings}` };
  const level = 'max' in limit ? limit.max : limit.min;
  const worse = (value: number) => ('max' in limit ? value >= level : value <= level);
  if (worse(last.value)) return { state: 'past it' };
  const reached = whenReached(line, level, confidence);
  if (reached.state === 'cannot be told') return { state: 'cannot be told', why: `cannot be told from ${readings}` };
  const towards = 'max' in limit ? line.slope > 0 : line.slope < 0;
  if (!towards) return { state: 'moves away' };
  return {
    state: 'told',
    hours: Math.max(0, reached.at - last.hours),
    from: Math.max(0, reached.from - last.hours),
    to: Math.max(0, reached.to - last.hours),
  };
}
