import type { Reading, ResultLine } from '../model/reading.ts';
import { readNumber } from '../quantities/read-number.ts';
import { type ShownNumber, showValue, withUnit } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { verdictWeight } from '../readings/verdict-weight.ts';
import type { ReadingLine } from './model.ts';
import { asPart } from './sentence.ts';

const sources: Readonly<Record<NonNullable<ResultLine['limit']>['source'], string>> = {
  maker: 'the maker’s',
  'machine-shop': 'machine shop',
  'common-practice': 'common practice, not the maker’s',
  none: 'no source named',
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

/** `27/26/24.5/27 bar`: one number a cylinder, rounded alike. */
function showList(text: string, system: UnitSystem): string | null {
  const [, numbers, unit] = /^([\d.,]+(?:\/[\d.,]+)+)\s*(.*)$/.exec(text.trim()) ?? [];
  if (numbers === undefined || unit === undefined) return null;
  const shown = numbers.split('/').map((each) => {
    const read = readNumber(`${each} ${unit}`);
    return read === null ? null : showNumberOf(read.value, read.unitText, null, system);
  });
  const last = shown.at(-1);
  if (!last || shown.some((each) => each === null)) return null;
  return withUnit({ ...last, number: shown.map((each) => each?.number).join(' / ') });
}

export interface ShownResult extends ShownNumber {
  /** What it can be off by, in the same unit. */
  readonly off: string | null;
}

/** A result's number, unit and ± apart, for those who set them apart; null for a text that is not numbers. */
export function resultParts(text: string, uncertainty: string | null, system: UnitSystem): ShownResult | null {
  const off = uncertainty === null ? null : readNumber(uncertainty);
  const shownOff =
    off === null ? null : showNumberOf(Number(off.value.toPrecision(2)), off.unitText, null, system).number;
  const read = readNumber(text);
  if (read !== null)
    return { ...showNumberOf(read.value, read.unitText, stepOf(text, off?.value ?? null), system), off: shownOff };
  const [, numbers, unit = ''] = /^([-\d.,]+(?:\/[-\d.,]+)+)\s*(.*)$/.exec(text.trim()) ?? [];
  if (numbers === undefined) return null;
  const shown = numbers.split('/').map((each) => {
    const number = readNumber(each);
    return number === null ? null : showNumberOf(number.value, unit, stepOf(text, off?.value ?? null), system);
  });
  const last = shown.at(-1);
  if (!last || shown.some((each) => each === null)) return null;
  return { ...last, number: shown.map((each) => each?.number).join(' / '), off: shownOff };
}

/** A result's text, rounded to what it is worth and in the shop's units; what is not a number stays as typed. */
export function showResult(text: string, uncertainty: string | null, system: UnitSystem): string {
  const read = readNumber(text);
  if (read === null) return showList(text, system) ?? text;
  const off = uncertainty === null ? null : readNumber(uncertainty);
  const value = showNumberOf(read.value, read.unitText, stepOf(text, off?.value ?? null), system);
  if (uncertainty === null) return withUnit(value);
  if (off === null || off.unitText !== read.unitText) return `${withUnit(value)} ±\u202f${uncertainty}`;
  const unsure = showNumberOf(Number(off.value.toPrecision(2)), off.unitText, null, system);
  return withUnit({ ...value, number: `${value.number} ±\u202f${unsure.number}` });
}

/** Number and unit apart. A value of ours has no typed text, so it is shown by its resolution. */
function showNumberOf(value: number, unit: string, resolution: number | null, system: UnitSystem): ShownNumber {
  const shown = showValue(value, unit, resolution, system);
  const [, number = shown, rest = ''] = /^([\u2212\d.\u202f]*\d)\u202f?(\D.*)?$/u.exec(shown) ?? [];
  return { number, unit: rest, closeUp: rest.startsWith('°') && rest.length === 1 };
}

export function sayLimit({ limit }: Pick<ResultLine, 'limit'>, system: UnitSystem): string {
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

export function sayResultLine(result: ResultLine, system: UnitSystem, how = ''): ReadingLine {
  const page = result.limit?.page === undefined ? '' : `, ${result.limit.page}`;
  return {
    what: result.of,
    how,
    value:
      result.value === null || result.value.trim() === '' ? '–' : showResult(result.value, result.uncertainty, system),
    limit: sayLimit(result, system),
    source: result.limit === null ? '' : `${sources[result.limit.source]}${page}`,
    verdict: result.verdict,
    weight: verdictWeight(result.verdict),
  };
}

/** Inputs and conditions as they were typed: `radius 200 mm, arc 82 mm`. A sheet has its own words for its fields. */
export function sayTyped(entries: Reading['inputs'], labels: Readonly<Record<string, { label: string }>> = {}): string {
  return Object.entries(entries)
    .map(([name, typed]) => `${labelOf(name, labels)} ${typed.trim().replaceAll(/\s*\n\s*/g, '; ')}`)
    .join(', ');
}

const labelOf = (name: string, labels: Readonly<Record<string, { label: string }>>): string => {
  const own = Object.hasOwn(labels, name) ? labels[name] : undefined;
  return own === undefined ? name.replaceAll(/([a-z])([A-Z])/g, '$1 $2').toLowerCase() : asPart(own.label);
};
