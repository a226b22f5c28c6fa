import type { MachineVisit } from '../../shared-lib/contract/machines.ts';

/** Visits with the newest first; of two on one day, the one opened later. */
export function newestFirst(visits: readonly MachineVisit[]): readonly MachineVisit[] {
  return visits.toSorted((a, b) => b.visit.date.localeCompare(a.visit.date) || b.visit.id.localeCompare(a.visit.id));
}

/** The most hours that any visit has seen. */
export function highestHours(visits: readonly MachineVisit[]): number | null {
  const read = visits.flatMap(({ trueHours }) => (trueHours === null ? [] : [trueHours]));
  return read.length === 0 ? null : Math.max(...read);
}
