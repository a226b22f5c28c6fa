import type { Quantity } from '../model/quantity.ts';
import { readNumber } from './read-number.ts';
import { convert, convertDifference, type Unit, type UnitSystem, unitNamed, units } from './units.ts';

export interface ShownNumber {
  readonly number: string;
  /** Empty where there is none. */
  readonly unit: string;
  /** The degree sign closes up; other units stand after a thin gap. */
  readonly closeUp: boolean;
}

/** Narrow and never broken at a line's end. */
export const thinGap = '\u202f';

/** The unit that asks the same question in the other system. */
const counterparts: Readonly<Record<string, string>> = {
  mm: 'in',
  µm: 'in',
  cm: 'in',
  m: 'ft',
  in: 'mm',
  ft: 'm',
  'mm²': 'in²',
  'cm²': 'in²',
  'in²': 'mm²',
  mL: 'fl oz',
  L: 'gal',
  'fl oz': 'mL',
  qt: 'L',
  gal: 'L',
  kPa: 'psi',
  Pa: 'psi',
  MPa: 'psi',
  bar: 'psi',
  mbar: 'psi',
  psi: 'kPa',
  inHg: 'kPa',
  '°C': '°F',
  '°F': '°C',
  N·m: 'lbf·ft',
  lbf·ft: 'N·m',
  lbf·in: 'N·m',
  'km/h': 'mph',
  mph: 'km/h',
  'm/s²': 'ft/s²',
  'ft/s²': 'm/s²',
  kg: 'lb',
  lb: 'kg',
  'mL/min': 'fl oz/min',
  'mL/h': 'fl oz/h',
  'L/min': 'gal/min',
  'gal/min': 'L/min',
  'fl oz/min': 'mL/min',
  'fl oz/h': 'mL/h',
  'mm per 10 min': 'in per 10 min',
  'in per 10 min': 'mm per 10 min',
  'mm per 100 h': 'in per 100 h',
  'in per 100 h': 'mm per 100 h',
};

/** The unit a person of that system expects for a question that is asked in `unit`. */
export function unitFor(unit: string, system: UnitSystem): string {
  const known = unitNamed(unit);
  if (known === null || known.system === 'both' || known.system === system) return unit;
  return counterparts[known.symbol] ?? unit;
}

/**
 * A quantity for people, in the units of the shop: `14 mm`, `23.5°`, `18 mm per 30 min`. Typed in that system it keeps its
 * own digits; converted, it gets no more digits than the typed ones are worth. A text that is not one number stays as typed.
 */
export function showQuantity(quantity: Quantity, system: UnitSystem): string {
  const shown = showNumber(quantity, system);
  if (shown === null) return quantity.typed.trim();
  return withUnit(shown);
}

export function withUnit({ number, unit, closeUp }: ShownNumber): string {
  return unit === '' ? number : `${number}${closeUp ? '' : thinGap}${unit}`;
}

/** Number and unit apart, for those who set the unit small; null for a text that is not one number. */
export function showNumber(quantity: Quantity, system: UnitSystem): ShownNumber | null {
  if (quantity.value === null) return null;
  return asTyped(quantity, system) ?? converted(quantity.value, quantity.unit, quantity.resolution, system);
}

/** A value of ours (never typed) for people: as many digits as its resolution is worth, else four. */
export function showValue(value: number, unit: string, resolution: number | null, system: UnitSystem): string {
  return withUnit(converted(value, unit, resolution, system));
}

/**
 * What a quantity can be off by, in the unit it is shown in: to two figures and never rounded to nothing. It is a difference:
 * no offset takes part, and what was typed for another span of time is off by as much more.
 */
export function showOff(quantity: Quantity, system: UnitSystem): string | null {
  const { uncertainty, value, typed, unit } = quantity;
  const shown = showNumber(quantity, system);
  if (shown === null || uncertainty === null || uncertainty === 0) return null;
  const [from, to] = [unitNamed(unit), unitNamed(shown.unit)];
  const inUnit = from === null || to === null ? null : convertDifference(uncertainty, from, to);
  const read = readNumber(typed)?.value;
  const off = inUnit ?? (read !== undefined && value ? (uncertainty * read) / value : uncertainty);
  return withUnit({ ...shown, number: String(Number(Math.abs(off).toPrecision(2))) });
}

function asTyped(quantity: Quantity, system: UnitSystem): ShownNumber | null {
  const read = readNumber(quantity.typed);
  if (read === null) return /^I{1,3}$/.test(quantity.typed.trim()) ? plain(quantity.typed.trim()) : null;
  const unit = read.unitText === '' ? unitNamed(quantity.unit) : unitNamed(read.unitText);
  const digits = tidyDigits(quantity.typed, read.unitText);
  if (unit !== null) {
    return unit.system === 'both' || unit.system === system ? withSymbol(digits, unit) : null;
  }
  if (read.unitText === '') return { number: digits, unit: quantity.unit, closeUp: false };
  const timed = /^(.+?)\s*(?:\/|\bper\b|\bin\b)\s*(.+)$/.exec(read.unitText);
  const amount = timed === null ? null : unitNamed(timed[1] ?? '');
  if (amount === null || !(amount.system === 'both' || amount.system === system)) return null;
  return { number: digits, unit: `${amount.symbol} per ${timed?.[2] ?? ''}`, closeUp: false };
}

/** The typed number without its unit, spelled our way: a point for a decimal comma, a real minus sign. */
function tidyDigits(typed: string, unitText: string): string {
  const spaced = typed.trim().replace(/[\u00a0\u202f]/g, ' ');
  const number = (unitText === '' ? spaced : spaced.slice(0, spaced.length - unitText.length)).trim();
  return groupThousands(
    number
      .replace(/^-/, '\u2212')
      .replace(/(\d),(\d)/, '$1.$2')
      .replace(/^(\u2212?)[.,]/, '$10.'),
  );
}

function converted(value: number, unitText: string, resolution: number | null, system: UnitSystem): ShownNumber {
  const from = unitNamed(unitText);
  const to = unitNamed(unitFor(unitText, system));
  const target = from === null || to === null ? from : to;
  const inTarget = from === null || target === null ? value : (convert(value, from, target) ?? value);
  const step =
    resolution === null || from === null || target === null ? resolution : convertDifference(resolution, from, target);
  const number = groupThousands(digitsOf(inTarget, step).replace(/^-/, '\u2212'));
  return target === null ? { number, unit: unitText, closeUp: false } : withSymbol(number, target);
}

/** Digits no finer than the step; without a step four of them. */
function digitsOf(value: number, step: number | null): string {
  if (step === null || step <= 0) return String(Number(value.toPrecision(4)));
  const decimals = Math.min(10, Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)));
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace(/^-/, '') : text;
}

/** Thousands parted by a thin gap: 6 260. */
function groupThousands(number: string): string {
  const [whole = '', ...rest] = number.split('.');
  if (!/^\u2212?\d+$/.test(whole)) return number;
  return [whole.replace(/\B(?=(?:\d{3})+$)/g, thinGap), ...rest].join('.');
}

const plain = (number: string): ShownNumber => ({ number, unit: '', closeUp: false });

const withSymbol = (number: string, unit: Unit): ShownNumber => ({
  number,
  unit: unit.symbol,
  closeUp: unit.closeUp === true,
});

/** Symbols offered beside a field, most usual first. */
export function unitsBeside(unit: string): readonly string[] {
  const known = unitNamed(unit);
  if (known === null) return unit === '' ? [] : [unit];
  return [known, ...units.filter((other) => other !== known && other.dimension === known.dimension)].map(
    ({ symbol }) => symbol,
  );
}
