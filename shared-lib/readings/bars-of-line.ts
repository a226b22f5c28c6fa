import type { ResultLine } from '../model/reading.ts';
import { readNumber } from '../quantities/read-number.ts';
import { readQuantity } from '../quantities/read-quantity.ts';
import { type LimitBar, limitBar } from './limit-bar.ts';

/**
 * The bars of a result as the record keeps it, one for each number of a list. Limits in another unit are brought to the
 * value's; where that cannot be done there is no bar, for it would say something false.
 *
 * @param difference  degrees of a difference carry no offset
 */
export function barsOfLine({ value, limit, uncertainty }: ResultLine, difference: boolean): readonly LimitBar[] {
  if (value === null || limit === null) return [];
  const [, list = '', unitOfList = ''] = /^([-\d.,]+(?:\/[-\d.,]+)+)\s*(.*)$/.exec(value.trim()) ?? [];
  const single = readNumber(value);
  const unit = single === null ? unitOfList : single.unitText;
  const plain = { id: '', label: '', unit, range: null, bad: 'neither' as const, fallback: null };
  const read = (text: string, isDifference: boolean): number | null => {
    const number = readNumber(text);
    // A unit of a sheet's own (`kPa per 10 min`) is in no table; the same unit needs none.
    if (number !== null && number.unitText === unit) return number.value;
    return readQuantity(text, unit, 'measured', isDifference ? { ...plain, difference: true } : plain).value;
  };
  const values = single === null ? list.split('/').map((each) => read(`${each} ${unit}`, difference)) : [single.value];
  const edges = Object.entries({
    min: limit.min,
    max: limit.max,
    badBelow: limit.badBelow,
    badAbove: limit.badAbove,
  }).flatMap(([edge, text]) => (text === undefined ? [] : [[edge, read(text, difference)] as const]));
  if (edges.length === 0 || edges.some(([, edge]) => edge === null)) return [];
  const off = uncertainty === null ? null : read(uncertainty, true);
  return values.flatMap((each) => (each === null ? [] : (limitBar(each, off, Object.fromEntries(edges)) ?? [])));
}
