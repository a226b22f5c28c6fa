import type { Reading, ResultLine } from '../model/reading.ts';
import { readNumber } from '../quantities/read-number.ts';
import { type ShownNumber, showValue, unitFor, withUnit } from '../quantities/show-quantity.ts';
import { convertDifference, type UnitSystem, unitNamed } from '../quantities/units.ts';
import { type ResultKind, typedResult } from '../readings/result-kind.ts';
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

/** The step to round to: the uncertainty's first digit, one finer where that is a 1 or 2. */
function stepWorth(uncertainty: number | null): number | null {
  if (uncertainty === null || uncertainty <= 0) return null;
  const order = Math.floor(Math.log10(uncertainty));
  const first = Math.floor(uncertainty / 10 ** order + 1e-9);
  return 10 ** (first <= 2 ? order - 1 : order);
}

/** A number of ours: to the digit that is unsure, or one finer where it was computed so. */
function stepComputed(text: string, uncertainty: number | null): number | null {
  const finest = stepWorth(uncertainty);
  if (finest === null || uncertainty === null) return null;
  return Math.min(10 ** Math.floor(Math.log10(uncertainty)), Math.max(finest, 10 ** -decimalsOf(text)));
}

/** Never finer than it was written: a typed number has no digits that nobody read. */
function stepOf(text: string, uncertainty: number | null): number | null {
  const worth = stepWorth(uncertainty);
  return worth === null ? null : Math.max(10 ** -decimalsOf(text), worth);
}

export interface ShownResult extends ShownNumber {
  /** One for each cylinder, or a single one. */
  readonly numbers: readonly string[];
  /** What it can be off by, in the same unit; null where nothing says. */
  readonly off: string | null;
}

/** A result's numbers, unit and ± apart, in the shop's units; null for a text that is not numbers. */
export function resultParts(
  text: string,
  uncertainty: string | null,
  system: UnitSystem,
  kind: ResultKind = typedResult,
): ShownResult | null {
  const off = uncertainty === null ? null : readNumber(uncertainty);
  const step = (kind.isComputed ? stepComputed : stepOf)(text, off?.value ?? null);
  const single = readNumber(text);
  const [, list = '', unit = ''] = /^([-\d.,]+(?:\/[-\d.,]+)+)\s*(.*)$/.exec(text.trim()) ?? [];
  const read = single === null ? list.split('/').map((each) => readNumber(`${each} ${unit}`)) : [single];
  const shown = read.map((each) => each && showNumberOf(each.value, each.unitText, step, system, kind.isDifference));
  const last = shown.at(-1);
  if (!last || shown.some((each) => each === null)) return null;
  const numbers = shown.flatMap((each) => each?.number ?? []);
  const unitText = read[0]?.unitText ?? '';
  const unsure =
    off?.value === 0
      ? null
      : off === null || off.unitText !== unitText
        ? uncertainty
        : twoFigures(off.value, off.unitText, system);
  return { ...last, number: numbers.join(' / '), numbers, off: unsure };
}

/** What it can be off by, in the shop's unit and to two figures there: a difference, whatever it is the ± of. */
function twoFigures(off: number, unit: string, system: UnitSystem): string {
  const [from, to] = [unitNamed(unit), unitNamed(unitFor(unit, system))];
  const inShop = from && to ? (convertDifference(off, from, to) ?? off) : off;
  return showNumberOf(Number(inShop.toPrecision(2)), to?.symbol ?? unit, null, system, true).number;
}

/** A result's text, rounded to what it is worth and in the shop's units; what is not a number stays as typed. */
export function showResult(
  text: string,
  uncertainty: string | null,
  system: UnitSystem,
  kind: ResultKind = typedResult,
): string {
  const parts = resultParts(text, uncertainty, system, kind);
  if (parts === null) return text;
  if (parts.off === null) return withUnit(parts);
  const isBare = /^[\u2212\d.\u202f]+$/u.test(parts.off);
  return isBare
    ? withUnit({ ...parts, number: `${parts.number} ±\u202f${parts.off}` })
    : `${withUnit(parts)} ±\u202f${parts.off}`;
}

/** Number and unit apart. A value of ours has no typed text, so it is shown by its resolution. */
function showNumberOf(
  value: number,
  unit: string,
  resolution: number | null,
  system: UnitSystem,
  difference: boolean,
): ShownNumber {
  const [from, to] = [unitNamed(unit), unitNamed(unitFor(unit, system))];
  const inShop = (number: number) => (from && to ? (convertDifference(number, from, to) ?? number) : number);
  const shown =
    difference && to !== null
      ? showValue(inShop(value), to.symbol, resolution === null ? null : inShop(resolution), system)
      : showValue(value, unit, resolution, system);
  const [, number = shown, rest = ''] = /^([\u2212\d.\u202f]*\d)\u202f?(\D.*)?$/u.exec(shown) ?? [];
  return { number, unit: rest, closeUp: rest.startsWith('°') && rest.length === 1 };
}

export function sayLimit(
  { limit }: Pick<ResultLine, 'limit'>,
  system: UnitSystem,
  kind: ResultKind = typedResult,
): string {
  if (limit === null) return '';
  const show = (text: string) => showResult(text, null, system, { ...kind, isComputed: false });
  const edges = [
    ...(limit.min === undefined ? [] : [`at least ${show(limit.min)}`]),
    ...(limit.max === undefined ? [] : [`at most ${show(limit.max)}`]),
    ...(limit.badBelow === undefined ? [] : [`beyond below ${show(limit.badBelow)}`]),
    ...(limit.badAbove === undefined ? [] : [`beyond above ${show(limit.badAbove)}`]),
  ];
  return edges.join('; ');
}

/** @param how  what it is computed from; empty for a reading that was written down as it was */
export function sayResultLine(
  result: ResultLine,
  system: UnitSystem,
  kind: ResultKind = typedResult,
  how = '',
): ReadingLine {
  const page = result.limit?.page === undefined ? '' : `, ${result.limit.page}`;
  return {
    what: result.of,
    how,
    value:
      result.value === null || result.value.trim() === ''
        ? '–'
        : showResult(result.value, result.uncertainty, system, kind),
    limit: sayLimit(result, system, kind),
    source: result.limit === null ? '' : `${sources[result.limit.source]}${page}`,
    verdict: result.verdict,
    weight: verdictWeight(result.verdict),
  };
}

/**
 * Inputs and conditions as they were typed: `radius 200 mm, arc 82 mm`. A sheet has its own words for its fields. Words stand
 * after a colon: `surface: dry concrete; pedals: latched`.
 */
export function sayTyped(entries: Reading['inputs'], labels: Readonly<Record<string, { label: string }>> = {}): string {
  const told = Object.entries(entries).map(([name, typed]) => ({
    label: labelOf(name, labels),
    typed: typed.trim().replaceAll(/\s*\n\s*/g, ', '),
  }));
  const hasWords = told.some(({ label, typed }) => /[,:]/.test(label) || !/^[-+−±.,]?\d/.test(typed));
  return told.map(({ label, typed }) => `${label}${hasWords ? ':' : ''} ${typed}`).join(hasWords ? '; ' : ', ');
}

const labelOf = (name: string, labels: Readonly<Record<string, { label: string }>>): string => {
  const own = Object.hasOwn(labels, name) ? labels[name] : undefined;
  return own === undefined ? name.replaceAll(/([a-z])([A-Z])/g, '$1 $2').toLowerCase() : asPart(own.label);
};
