import type { Layout } from '../model/layout.ts';

export type Bank = 'L' | 'R' | 'A' | 'B';

/** Where a numbered cylinder stands: its order from the free end, within its bank where banks are known. */
export interface CylinderPlace {
  readonly number: number;
  readonly bank: Bank | null;
  readonly fromFreeEnd: number;
}

/**
 * Every cylinder of an engine by the machine's own number.
 *
 * A maker's list that is not filled in yet counts as numbered from the free end, so that nothing blocks; `speakNumbering`
 * says that the list is missing.
 */
export function cylinderPlaces(layout: Layout): readonly CylinderPlace[] {
  const { scheme, list } = layout.numbering;
  const count = layout.engine.cylinders;
  if (scheme === 'list' && list !== undefined && list.length > 0)
    return list.map((entry) => ({ number: entry.number, bank: entry.bank ?? null, fromFreeEnd: entry.fromFreeEnd }));
  return Array.from({ length: count }, (_, index) => ({
    number: index + 1,
    bank: null,
    fromFreeEnd: scheme === 'drive-first' ? count - index : index + 1,
  }));
}
