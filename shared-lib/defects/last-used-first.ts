import type { Defect } from './defect.ts';

/** The kinds used lately first, newest first; the others keep their order. Ids that are not in the list are passed over. */
export function lastUsedFirst(list: readonly Defect[], lastUsedIds: readonly string[]): readonly Defect[] {
  const used = lastUsedIds.flatMap((id) => list.find((defect) => defect.id === id) ?? []);
  const first = [...new Set(used)];
  return [...first, ...list.filter((defect) => !first.includes(defect))];
}
