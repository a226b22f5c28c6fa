import type { Reading, ResultLine, Verdict } from '../model/reading.ts';
import { readNumber } from '../quantities/read-number.ts';
import { showValue } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';
import type { ReadingLine } from './model.ts';

const sources: Readonly<Record<NonNullable<ResultLine['limit']>['source'], string>> = {
  maker: 'the maker’s',
  'machine-shop': 'machine shop',
  'common-practice': 'common practice, not the maker’s',
  none: 'no source named',
};

const weights: Readonly<Partial<Record<Verdict, ReadingLine['weight']>>> = {
  beyond: 'solid',
  shown: 'solid',
  watch: 'heavy',
  'too close to tell': 'dashed',
};

const decimalsOf = (text: string): number => /[.,](\d+)/.exec(text)?.[1]?.length ?? 0;

/** The step to round to: the uncertainty's first digit, one finer where that is a 1 or 2; never finer than it was written. */
function stepOf(text: string, uncertainty: number | null): number | null {
  const written = 10 ** -decimalsOf(text);
  if (uncertainty === null || uncertainty <= 0) return null;
  const order = Math.floor(Math.log10(uncertainty));
  const first = Math.floor(uncertainty / 10 ** order + 1e-9);
  return Math.max(written, 10 ** (first <= 2 ? order - 1 : order));
}

/** A result's text, rounded to what it is worth and in the shop's units; what is not one number stays as typed. */
export function showResult(text: string, uncertainty: string | null, system: UnitSystem): string {
  const read = readNumber(text);
  if (read === null) return text;
  const off = uncertainty === null ? null : (readNumber(uncertainty)?.value ?? null);
  return showValue(read.value, read.unitText, stepOf(text, off), system);
}

function sayLimit({ limit }: ResultLine, system: UnitSystem): string {
  if (limit === null) return '';
  const show = (text: string) => showResult(text, null, system);
  const edges = [
    ...(limit.min === undefined ? [] : [`at least ${show(limit.min)}`]),
    ...(limit.max === undefined ? [] : [`at most ${show(limit.max)}`]),
    ...(limit.badBelow === undefined ? [] : [`beyond below ${show(limit.badBelow)}`]),
    ...(limit.badAbove === undefined ? [] : [`beyond above ${show(limit.badAbove)}`]),
  ];
  return edges.join('; ');
}

export function sayResultLine(result: ResultLine, system: UnitSystem): ReadingLine {
  const value = result.value === null ? '' : showResult(result.value, result.uncertainty, system);
  const off =
    result.uncertainty === null || value === '' ? '' : ` ±\u202f${showResult(result.uncertainty, null, system)}`;
  const page = result.limit?.page === undefined ? '' : `, ${result.limit.page}`;
  return {
    what: result.of,
    value: value === '' ? '–' : `${value}${off}`,
    limit: sayLimit(result, system),
    source: result.limit === null ? '' : `${sources[result.limit.source]}${page}`,
    verdict: result.verdict,
    weight: weights[result.verdict] ?? 'plain',
  };
}

/** Inputs and conditions as they were typed: `radius 200 mm, arc 82 mm`. */
export function sayTyped(entries: Reading['inputs']): string {
  return Object.entries(entries)
    .map(([name, typed]) => `${name.replaceAll(/([a-z])([A-Z])/g, '$1 $2').toLowerCase()} ${typed}`)
    .join(', ');
}
