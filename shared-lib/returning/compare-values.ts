import type { Compared } from '../contract/returning.ts';
import type { BadWay } from '../quantities/dictionary.ts';
import { showValue, unitFor } from '../quantities/show-quantity.ts';
import { convertDifference, type UnitSystem, unitNamed } from '../quantities/units.ts';

export interface ValueThen {
  readonly value: number;
  /** What it can be off by, in the value's unit; null where nothing says. */
  readonly uncertainty: number | null;
  readonly unit: string;
}

export interface Comparison {
  readonly what: string;
  readonly bad: BadWay;
  readonly was: ValueThen;
  readonly now: ValueThen;
  /** True hours between; null where they are not known. */
  readonly hours: number | null;
  readonly units: UnitSystem;
  readonly shown: (value: ValueThen) => string;
}

/**
 * What became of a number between two visits. What the two can be off by is added, not squared: nothing says that the two
 * gauges err apart. A change inside that sum is not told.
 *
 * Source: the handbook's chapter 8 (different instrument: add U's) and its crack growth rule (less than 2 U: no growth
 * shown); common practice, no source.
 * @example 22 mm and 31 mm, each ± 0.5 mm, 210 h between: +9 ± 1 mm, 4.3 mm per 100 h
 */
export function compareValues({ what, bad, was, now, hours, units, shown }: Comparison): Compared {
  const base = { what, was: shown(was), now: shown(now) };
  if (was.unit !== now.unit)
    return { ...base, change: 'not comparable: written in different units', state: 'not-comparable' };
  if (was.uncertainty === null || now.uncertainty === null)
    return { ...base, change: 'not comparable: nothing says what it can be off by', state: 'not-comparable' };
  const difference = now.value - was.value;
  const off = was.uncertainty + now.uncertainty;
  const say = (value: number) => sayDifference(value, off, now.unit, units);
  if (Math.abs(difference) <= off * (1 + 1e-9))
    return { ...base, change: `no change that can be told (${say(difference)})`, state: 'no-change-told' };
  const per100 = hours === null || hours <= 0 ? '' : `, ${perHundred(difference, hours, now.unit, units)}`;
  return { ...base, change: `${say(difference)}${per100}`, state: stateOf(difference, bad) };
}

function stateOf(difference: number, bad: BadWay): Compared['state'] {
  if (bad === 'either' || bad === 'neither') return 'changed';
  return difference > 0 === (bad === 'higher') ? 'worse' : 'better';
}

/** A difference in the shop's unit: degrees carry no offset in it. */
function showDifference(difference: number, step: number | null, unit: string, units: UnitSystem): string {
  const [from, to] = [unitNamed(unit), unitNamed(unitFor(unit, units))];
  if (from === null || to === null) return showValue(difference, unit, step, units);
  const inShop = (value: number) => Number((convertDifference(value, from, to) ?? value).toPrecision(6));
  return showValue(inShop(difference), to.symbol, step === null ? null : inShop(step), units);
}

/** To the first digit of what it can be off by. */
function sayDifference(difference: number, off: number, unit: string, units: UnitSystem): string {
  const step = off > 0 ? 10 ** Math.floor(Math.log10(off) + 1e-9) : null;
  const number = showDifference(Math.abs(difference), step, unit, units);
  const sign = difference > 0 ? '+' : difference < 0 ? '\u2212' : '';
  return off === 0 ? `${sign}${number}` : `${sign}${number} ±\u202f${showDifference(off, step, unit, units)}`;
}

function perHundred(difference: number, hours: number, unit: string, units: UnitSystem): string {
  const sign = difference < 0 ? '\u2212' : '';
  const per = Number(((100 * Math.abs(difference)) / hours).toPrecision(2));
  return `${sign}${showDifference(per, null, unit, units)} per 100\u202fh`;
}
