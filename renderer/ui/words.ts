import { sayIsoDay } from '../../shared-lib/report/dates.ts';

/** Narrow, and never broken at the end of a line. */
const thinSpace = '\u202f';

/** `2026-06-08` as `8 June 2026`; the text itself where it is no date. */
export const dateWords = (isoDate: string): string => sayIsoDay(isoDate.slice(0, 10));

/** `8 June`, where the year is clear. */
export function dayWords(isoDate: string): string {
  return dateWords(isoDate).replace(/ \d{4}$/, '');
}

/** Whole numbers in groups of three with narrow spaces: `6 260`. At most one decimal. */
export function numberWords(value: number): string {
  const rounded = Math.round(value * 10) / 10;
  const [whole = '0', fraction] = Math.abs(rounded).toString().split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, thinSpace) : whole;
  const sign = rounded < 0 ? '\u2212' : '';
  return `${sign}${grouped}${fraction === undefined ? '' : `.${fraction}`}`;
}

/** `6 260 h`, for running text. */
export function hoursWords(hours: number): string {
  return `${numberWords(hours)}${thinSpace}h`;
}

/** `09:12` on the clock of this computer. */
export function clockWords(atMs: number): string {
  const at = new Date(atMs);
  return `${String(at.getHours()).padStart(2, '0')}:${String(at.getMinutes()).padStart(2, '0')}`;
}

/** Today as `2026-06-08` on the clock of this computer. */
export function today(): string {
  const now = new Date();
  const month = String(now.getMonth() + 1).padStart(2, '0');
  return `${now.getFullYear()}-${month}-${String(now.getDate()).padStart(2, '0')}`;
}

/** `1 finding`, `3 findings`. */
export function countWords(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The first letter large. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
