import type { Quantity } from '../model/quantity.ts';
import type { QuantityKind } from './dictionary.ts';
import { fallbackUncertainty } from './fallback-uncertainty.ts';
import { readNumber } from './read-number.ts';
import { convert, convertDifference, type Unit, unitNamed } from './units.ts';

/** A number's unit as typed, brought to one of our units: `value x scale` counts in `unit`. */
interface TypedUnit {
  readonly unit: Unit;
  readonly scale: number;
}

/** Enough digits for any bench reading, few enough to drop the last bits of binary arithmetic. */
const tidy = (value: number): number => Number(value.toPrecision(14));

/**
 * Reads a quantity as a mechanic types it: `14`, `0.38 V`, `7/16 in`, `.0035"`, `212F`, `18 mm per 30 min`, `II`, `6,5 mm`,
 * `14 ± 1 mm`. The text is always kept. What is not plainly one number in a unit we know has no value: nothing is guessed.
 *
 * @param defaultUnit  what a bare number is in; the value is brought to it where the typed unit measures the same thing
 * @param kind         the question it answers: its other unit, its fallback uncertainty, whether it is a difference
 * Source of the factors: NIST SP 811 (see units.ts).
 */
export function readQuantity(
  typed: string,
  defaultUnit: string,
  origin: Quantity['origin'],
  kind: QuantityKind | null = null,
): Quantity {
  const notOneNumber: Quantity = {
    typed,
    value: null,
    unit: defaultUnit,
    resolution: null,
    uncertainty: null,
    origin,
  };
  const leakClass = classes.get(typed.trim());
  if (leakClass !== undefined && defaultUnit === '') return { ...notOneNumber, value: leakClass };

  const read = readNumber(typed);
  if (read === null) return notOneNumber;
  const place = placed(read.unitText, defaultUnit, kind);
  if (place === null) return notOneNumber;
  const { from, scale, to } = place;
  const toUnit = (value: number): number | null =>
    from === null || to === null ? value : change(value * scale, from, to, kind);
  const toDifference = (value: number): number | null =>
    from === null || to === null ? value : convertDifference(value * scale, from, to);

  const value = toUnit(read.value);
  if (value === null) return { ...notOneNumber, unit: from?.symbol ?? defaultUnit };
  const resolution = toDifference(read.resolution);
  const said = read.plusMinus === null ? null : toDifference(read.plusMinus);
  const unit = to?.symbol ?? defaultUnit;
  return {
    typed,
    value: tidy(value),
    unit,
    resolution: resolution === null ? null : tidy(resolution),
    uncertainty: said === null ? fallbackUncertainty(kind, value, unit, origin) : tidy(said),
    origin,
  };
}

/** Classes of leak are counted, I to III. */
// A map, not an object: `valueOf` and its like are words that can be typed.
const classes: ReadonlyMap<string, number> = new Map([
  ['I', 1],
  ['II', 2],
  ['III', 3],
]);

function change(value: number, from: Unit, to: Unit, kind: QuantityKind | null): number | null {
  return kind?.difference === true ? convertDifference(value, from, to) : convert(value, from, to);
}

/** Which unit the number stands in and which one it is kept in; null when the unit's text is not understood. */
function placed(
  unitText: string,
  defaultUnit: string,
  kind: QuantityKind | null,
): { from: Unit | null; scale: number; to: Unit | null } | null {
  const target = unitNamed(defaultUnit);
  if (unitText === '') return { from: target, scale: 1, to: target };
  const typedUnit = unitTyped(unitText);
  if (typedUnit === null) return null;
  const { unit, scale } = typedUnit;
  if (target === null) {
    // A plain count has no unit to be typed; a question without a fixed unit takes the one that is typed.
    return kind === null || kind.anyUnit === true ? { from: unit, scale, to: unit } : null;
  }
  const other = kind?.otherUnit === undefined ? null : unitNamed(kind.otherUnit);
  const to = other !== null && other.dimension === unit.dimension ? other : target;
  return { from: asRate(unit, to), scale, to };
}

/** Millimetres per time serve drift and growth alike; the question decides which. */
function asRate(unit: Unit, to: Unit): Unit {
  if (unit.dimension === 'drift' && to.dimension === 'growth') {
    return { ...unit, dimension: 'growth', factor: unit.factor * tenMinutesPer100Hours };
  }
  return unit;
}

const tenMinutesPer100Hours = (100 * 60) / 10;

const rate = /^(.+?)\s*(?:\/|\bper\b|\bin\b)\s*(\d+(?:[.,]\d+)?)?\s*([a-z]+)$/i;

/** A unit by its name, or a length or volume in a stated time. */
function unitTyped(text: string): TypedUnit | null {
  const whole = unitNamed(text);
  if (whole !== null) return { unit: whole, scale: 1 };
  const [, amount, count = '1', time] = rate.exec(text) ?? [];
  const amountUnit = amount === undefined ? null : unitNamed(amount);
  const timeUnit = time === undefined ? null : unitNamed(time);
  const counted = Number(count.replace(',', '.'));
  if (amountUnit === null || timeUnit?.dimension !== 'time' || !(counted > 0)) return null;
  const minutes = (counted * timeUnit.factor) / 60;
  const basis = { length: 'mm per 10 min', volume: 'mL/min' }[amountUnit.dimension as 'length' | 'volume'];
  const unit = basis === undefined ? null : unitNamed(basis);
  if (unit === null) return null;
  return { unit, scale: (amountUnit.factor * (amountUnit.dimension === 'length' ? 10 : 1)) / minutes };
}
