import type { MachineVisit } from '../../shared-lib/contract/machines.ts';
import type { FittedPart } from '../../shared-lib/model/machine.ts';
import { readHours } from './read-hours.ts';

export const partKinds: readonly { readonly value: FittedPart['kind']; readonly words: string }[] = [
  { value: 'new', words: 'New' },
  { value: 'used', words: 'Used' },
  { value: 'donor', words: 'From a donor machine' },
];

/** A fitted part while it is written down. */
export interface PartDraft {
  readonly path: string | null;
  readonly kind: FittedPart['kind'] | null;
  readonly visitId: string | null;
  /** Null while they are those of the visit. */
  readonly hours: string | null;
}

export const hoursOfVisit = (visits: readonly MachineVisit[], visitId: string | null): number | null =>
  visits.find(({ visit }) => visit.id === visitId)?.trueHours ?? null;

/** What stands in the hours' field: what was typed, else what the visit's meter says. */
export function hoursText(typed: string | null, visits: readonly MachineVisit[], visitId: string | null): string {
  return typed ?? String(hoursOfVisit(visits, visitId) ?? '');
}

/** @returns undefined while what stands there is not a number of hours */
export function hoursWritten(text: string): number | null | undefined {
  const read = readHours(text);
  if (read.kind === 'blank') return null;
  return read.kind === 'hours' ? read.hours : undefined;
}
