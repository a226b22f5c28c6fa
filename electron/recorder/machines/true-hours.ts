import type { Meter } from '../../../shared-lib/model/machine.ts';
import type { MeterReading } from '../../../shared-lib/model/visit.ts';

/** Hours the machine has really run: the reading plus the offset of the meter it was read on; null while nobody read one. */
export const trueHours = (reading: MeterReading, meters: readonly Meter[]): number | null => {
  if (reading.reading === null) return null;
  return reading.reading + (meters.find(({ id }) => id === reading.meterId)?.offsetHours ?? 0);
};
