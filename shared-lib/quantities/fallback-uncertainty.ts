import type { Quantity } from '../model/quantity.ts';
import type { QuantityKind } from './dictionary.ts';
import { convertDifference, unitNamed } from './units.ts';

/**
 * How far a value can be off when neither instrument nor mechanic has said, in the value's unit.
 *
 * @returns null where the dictionary has no figure, and for guesses and owner's reports: those have no gauge behind them
 * Source: the handbook's quantity dictionary, common practice, no source.
 */
export function fallbackUncertainty(
  kind: QuantityKind | null,
  value: number,
  unit: string,
  origin: Quantity['origin'],
): number | null {
  if (kind === null || origin === 'estimate' || origin === 'owner-reported') return null;
  const inOther = kind.otherUnit !== undefined && unit === kind.otherUnit;
  const fallback = inOther ? (kind.otherFallback ?? null) : kind.fallback;
  if (fallback === null) return null;
  if ('share' in fallback) return Number((Math.abs(value) * fallback.share).toPrecision(6));
  const own = origin === 'photo' ? (fallback.fromPhoto ?? fallback.absolute) : fallback.absolute;
  const from = unitNamed(inOther ? (kind.otherUnit ?? '') : kind.unit);
  const to = unitNamed(unit);
  if (from === null || to === null) return own;
  const converted = convertDifference(own, from, to);
  return converted === null ? null : Number(converted.toPrecision(6));
}
