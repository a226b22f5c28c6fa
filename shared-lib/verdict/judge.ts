import type { Verdict } from '../model/reading.ts';
import { type Edges, limitProblem } from './limit.ts';

export type JudgedVerdict = Extract<Verdict, 'within' | 'beyond' | 'watch' | 'too close to tell' | 'recorded only'>;

/** Binary arithmetic must not decide: 0.30 − 0.10 and 0.20 are the same edge. */
const relativeGuard = 1e-9;

/**
 * What a value says against a limit when it can be off by `uncertainty`.
 *
 * @param value        in the unit of the limit
 * @param uncertainty  U, the value's own half-width, same unit, never negative
 * @returns  within: better than the edge by U, the edge of that counting as within. Beyond: worse by more than U. Watch:
 *   between a limit's two edges, clear of both by U. Else too close to tell. Without a limit, without a U or with a value
 *   that is not a number: recorded only.
 * Source: the decision-rule thinking of ISO 14253-1 and JCGM 106.
 * @example judge(33, 3, { min: 30 }) // 'within'
 */
export function judge(value: number, uncertainty: number | null, limit: Edges | null): JudgedVerdict {
  if (limit === null || limitProblem(limit) !== null || !Number.isFinite(value)) return 'recorded only';
  if (uncertainty === null || !Number.isFinite(uncertainty) || uncertainty < 0) return 'recorded only';
  const { min, max, badBelow, badAbove } = limit;
  const sides: JudgedVerdict[] = [];
  const upper = max ?? badAbove;
  if (upper !== undefined) sides.push(below(value, uncertainty, upper, badAbove ?? upper));
  const lower = min ?? badBelow;
  if (lower !== undefined) sides.push(below(-value, uncertainty, -lower, -(badBelow ?? lower)));
  return badness.find((verdict) => sides.includes(verdict)) ?? 'recorded only';
}

const badness: readonly JudgedVerdict[] = ['beyond', 'watch', 'too close to tell', 'within'];

/** One side: small is good, `edge` ends within and `bad` begins beyond. */
function below(value: number, uncertainty: number, edge: number, bad: number): JudgedVerdict {
  const guard = relativeGuard * Math.max(Math.abs(value), Math.abs(edge), Math.abs(bad), uncertainty);
  const above = (mark: number) => value - mark > guard;
  if (!above(edge - uncertainty)) return 'within';
  if (above(bad + uncertainty)) return 'beyond';
  return bad > edge && above(edge + uncertainty) && !above(bad - uncertainty) ? 'watch' : 'too close to tell';
}
