import type { Meter } from '../../shared-lib/model/machine.ts';

/** The meter that is on the machine now: the one that nothing has ended, the newest if there are several. */
export function meterInNow(meters: readonly Meter[]): Meter | undefined {
  const open = meters.filter(({ until }) => until === null);
  return open.toSorted((a, b) => (a.from ?? '').localeCompare(b.from ?? '') || a.id.localeCompare(b.id)).at(-1);
}
