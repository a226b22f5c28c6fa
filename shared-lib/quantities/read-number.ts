export interface ReadNumber {
  readonly value: number;
  /** The last digit typed, or the fraction's own step. */
  readonly resolution: number;
  /** What stands after ±, in the same unit. */
  readonly plusMinus: number | null;
  /** What is left: the unit as typed, or empty. */
  readonly unitText: string;
}

const vulgar: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

const decimal = String.raw`(?:\d+(?:[.,]\d*)?|[.,]\d+)`;
const grouped = String.raw`\d{1,3}(?: \d{3})+(?:[.,]\d+)?`;
const fraction = String.raw`(?:(\d{1,4})[ -])?(\d{1,3})\/(2|4|8|16|32|64|128)`;
const plusMinus = String.raw`\s*(?:±|\+\/-|\+-)\s*(${decimal})`;
const unitStart = String.raw`(?![\d.,/])`;

const fractionAlone = new RegExp(`^(-?)${fraction}${unitStart}\\s*(.*)$`);
const numberAlone = new RegExp(`^(-?)(${grouped}|${decimal})${unitStart}(?:${plusMinus}${unitStart})?\\s*(.*)$`);
const unitThenPlusMinus = new RegExp(`^(.*?)${plusMinus}\\s*(.*)$`);

/**
 * The number at the head of a typed text, with what is left for the unit.
 *
 * A comma is read as a decimal comma, except where it may as well part thousands (`1,250`): that is not read at all, and
 * neither are two commas, a list (`27/26/24.5`) or a number with words before it.
 *
 * @returns null when the text is not plainly one number
 */
export function readNumber(typed: string): ReadNumber | null {
  const text = typed
    .normalize('NFC')
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[\u2212\u2013]/g, '-')
    .replace(
      /[½¼¾⅛⅜⅝⅞]/g,
      (sign, at: number, all: string) => `${/\d/.test(all[at - 1] ?? '') ? ' ' : ''}${vulgar[sign]}`,
    )
    .replaceAll('\u2044', '/')
    .replace(/\s+/g, ' ')
    .trim();
  return readFraction(text) ?? readDecimal(text);
}

function readFraction(text: string): ReadNumber | null {
  const match = fractionAlone.exec(text);
  if (match === null) return null;
  const [, sign, whole = '0', numerator = '0', denominator = '1', unitText = ''] = match;
  const step = 1 / Number(denominator);
  if (Number(numerator) >= Number(denominator)) return null;
  const value = Number(whole) + Number(numerator) * step;
  return { value: sign === '-' ? -value : value, resolution: step, plusMinus: null, unitText: unitText.trim() };
}

function readDecimal(text: string): ReadNumber | null {
  const match = numberAlone.exec(text);
  if (match === null) return null;
  const [, sign, digits = '', spread, rest = ''] = match;
  const value = plainNumber(digits);
  if (value === null) return null;
  const inUnit = spread === undefined ? unitThenPlusMinus.exec(rest) : null;
  if (inUnit !== null && (inUnit[3] ?? '') !== '' && inUnit[3] !== inUnit[1]?.trim()) return null;
  const unitText = (inUnit?.[1] ?? rest).trim();
  const spreadText = spread ?? inUnit?.[2];
  const spreadValue = spreadText === undefined ? null : plainNumber(spreadText);
  if (spreadText !== undefined && spreadValue === null) return null;
  return {
    value: sign === '-' ? -value : value,
    resolution: 10 ** -decimalsOf(digits),
    plusMinus: spreadValue,
    unitText,
  };
}

function plainNumber(digits: string): number | null {
  if (/^[1-9]\d{0,2},\d{3}$/.test(digits)) return null;
  const value = Number(digits.replaceAll(' ', '').replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}

/** How many digits stand after the point or comma. */
function decimalsOf(digits: string): number {
  return /[.,](\d*)$/.exec(digits)?.[1]?.length ?? 0;
}
