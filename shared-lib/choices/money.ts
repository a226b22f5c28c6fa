import type { CostLine, Money } from './records.ts';

/** An exact decimal: a whole number of steps of 10^-scale. */
interface Exact {
  readonly steps: bigint;
  readonly scale: number;
}

function exact(text: string): Exact {
  const [whole = '0', fraction = ''] = text.replace('-', '').split('.');
  const steps = BigInt(`${whole}${fraction}`);
  return { steps: text.startsWith('-') ? -steps : steps, scale: fraction.length };
}

function toScale({ steps, scale }: Exact, wanted: number): bigint {
  return steps * 10n ** BigInt(wanted - scale);
}

function add(a: Exact, b: Exact): Exact {
  const scale = Math.max(a.scale, b.scale);
  return { steps: toScale(a, scale) + toScale(b, scale), scale };
}

const times = (a: Exact, b: Exact): Exact => ({ steps: a.steps * b.steps, scale: a.scale + b.scale });

/** Half away from zero, as tills round. */
function rounded(value: Exact, digits: number): Exact {
  if (value.scale <= digits) return { steps: toScale(value, digits), scale: digits };
  const unit = 10n ** BigInt(value.scale - digits);
  const positive = value.steps < 0n ? -value.steps : value.steps;
  const steps = (positive + unit / 2n) / unit;
  return { steps: value.steps < 0n ? -steps : steps, scale: digits };
}

function written({ steps, scale }: Exact): string {
  const digits = (steps < 0n ? -steps : steps).toString().padStart(scale + 1, '0');
  const at = digits.length - scale;
  return `${steps < 0n ? '-' : ''}${digits.slice(0, at)}${scale === 0 ? '' : `.${digits.slice(at)}`}`;
}

/** Minor units of a currency: 2 for most, 0 for some. Source: ISO 4217, as the runtime's `Intl` carries it. */
export function minorDigits(currency: string): number {
  if (!/^[A-Z]{3}$/.test(currency)) return 2;
  return new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions().maximumFractionDigits ?? 2;
}

export interface Cost {
  /** Each line, rounded to the currency's smallest unit, in the order given. */
  readonly lines: readonly string[];
  readonly net: string;
  readonly tax: string | null;
  readonly total: string;
}

/** What the lines come to: each rounded as it is printed, so that the printed column adds up; tax on the sum. */
export function costOf(lines: readonly CostLine[], { currency, taxPercent }: Money): Cost {
  const digits = minorDigits(currency);
  const amounts = lines.map(({ amount, price }) => rounded(times(exact(amount), exact(price)), digits));
  const net = amounts.reduce(add, { steps: 0n, scale: digits });
  const tax =
    taxPercent === null
      ? null
      : rounded(times(net, { ...exact(taxPercent), scale: exact(taxPercent).scale + 2 }), digits);
  return {
    lines: amounts.map(written),
    net: written(net),
    tax: tax === null ? null : written(tax),
    total: written(tax === null ? net : add(net, tax)),
  };
}

/** `1 240.50 EUR`: groups of three with narrow spaces that never break. */
export function sayMoney(amount: string, currency: string): string {
  const [whole = '', fraction] = amount.replace('-', '').split('.');
  const grouped = whole.replaceAll(/\B(?=(\d{3})+$)/g, '\u202f');
  const sign = amount.startsWith('-') ? '\u2212' : '';
  return `${sign}${grouped}${fraction === undefined ? '' : `.${fraction}`}${currency === '' ? '' : `\u00a0${currency}`}`;
}
