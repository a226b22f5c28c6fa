import type { InputOf } from '../../shared-lib/contract/operations.ts';
import type { Use } from '../../shared-lib/model/visit.ts';
import { readHours } from './read-hours.ts';

/** What is said when a machine comes in, before it is written down. */
export interface VisitDraft {
  readonly date: string;
  readonly hours: string;
  readonly isEstimate: boolean;
  readonly complaint: string;
  readonly use: Use;
}

/** The most usual exposure; the mechanic changes it to this owner's. */
const usualUse: Use = { road: false, slope: false, peopleNear: true, exposureHours: 250 };

export function emptyVisitDraft(date: string, use: Use = usualUse): VisitDraft {
  return { date, hours: '', isEstimate: false, complaint: '', use };
}

/** Whether the date is one: `2026-06-08`, and in the calendar. */
export function isDate(text: string): boolean {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) return false;
  const at = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(at.getTime()) && at.toISOString().startsWith(text);
}

/** What the recorder is asked to write. */
export function visitInput(draft: VisitDraft, machineId: string, meterId: string | null): InputOf<'visit.open'> {
  const read = readHours(draft.hours);
  return {
    machineId,
    date: draft.date,
    complaint: draft.complaint.trim(),
    use: draft.use,
    ...(draft.hours.trim() === ''
      ? {}
      : {
          meter: {
            meterId,
            typed: draft.hours.trim(),
            reading: read.kind === 'hours' ? read.hours : null,
            estimate: draft.isEstimate,
          },
        }),
  };
}
