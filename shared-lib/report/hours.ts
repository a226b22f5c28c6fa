import type { VisitRecord } from '../contract/visits.ts';
import { showValue } from '../quantities/show-quantity.ts';
import type { UnitSystem } from '../quantities/units.ts';
import { reportWords } from '../wording/report.ts';

export interface SaidHours {
  readonly label: string;
  readonly value: string;
  readonly unit: string;
  /** How the hours were got, as a sentence. */
  readonly how: string;
}

/** True hours where a meter was read; what was typed where it was not a number; and always whether it is an estimate. */
export function sayHours({ visit, trueHours, meters }: VisitRecord, system: UnitSystem): SaidHours {
  const label = visit.meter.estimate ? 'hours, estimated' : 'hours';
  const number = (hours: number) => showValue(hours, '', 1, system);
  const value = trueHours === null ? visit.meter.typed.trim() : number(trueHours);
  const meter = meters.find(({ id }) => id === visit.meter.meterId);
  const offset =
    meter !== undefined && meter.offsetHours !== 0 && visit.meter.reading !== null
      ? ` The meter shows ${number(visit.meter.reading)}\u202fh; ${number(meter.offsetHours)}\u202fh were run before it was fitted.`
      : '';
  const estimate = visit.meter.estimate ? ' An estimate, not a reading.' : '';
  if (value === '')
    return { label: 'hours', value: reportWords.hoursNotRead, unit: '', how: 'No hour meter was read.' };
  return { label, value, unit: '', how: `${value}\u202fh.${offset}${estimate}` };
}
