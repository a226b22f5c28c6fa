import type { ResultLine } from '../model/reading.ts';

/** Whose figure a value is held against. */
export type LimitSource = NonNullable<ResultLine['limit']>['source'];

/**
 * The edges of a limit, in the unit of the value that is held against it. `min` and `max` end *within*; `badBelow` and
 * `badAbove` begin *beyond* where there is a middle zone between.
 */
export interface Edges {
  readonly min?: number;
  readonly max?: number;
  readonly badBelow?: number;
  readonly badAbove?: number;
}

export interface Limit extends Edges {
  readonly source: LimitSource;
  /** The page or paper it stands on, as typed. */
  readonly page?: string;
  /** Where a default comes from: 'common practice, no source', or the document and table. */
  readonly cites?: string;
}

/** Why a limit cannot be used, or null: its edges must stand in order, better inside worse. */
export function limitProblem({ min, max, badBelow, badAbove }: Edges): string | null {
  const edges = [min, max, badBelow, badAbove].filter((edge) => edge !== undefined);
  if (edges.length === 0) return 'the limit has no number';
  if (!edges.every(Number.isFinite)) return 'an edge of the limit is not a number';
  if (min !== undefined && max !== undefined && min > max) return 'the least allowed is more than the most allowed';
  if (badBelow !== undefined && min !== undefined && badBelow > min)
    return 'the lower edge of the middle zone lies above the least allowed';
  if (badAbove !== undefined && max !== undefined && badAbove < max)
    return 'the upper edge of the middle zone lies below the most allowed';
  return null;
}
