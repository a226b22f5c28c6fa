import { describe, expect, it } from 'vitest';
import { floorHeadline, floorOwner, machineName, plateHours } from '../../../../renderer/machines/floor-words.ts';
import { meterInNow } from '../../../../renderer/machines/meter-now.ts';
import { emptyVisitDraft, isDate, visitInput } from '../../../../renderer/machines/visit-draft.ts';
import { placeWords } from '../../../../renderer/machines/visit-words.ts';
import type { FloorMachine } from '../../../../shared-lib/contract/machines.ts';
import type { Tier } from '../../../../shared-lib/contract/standing.ts';

const machine: FloorMachine = {
  machine: { id: 'm', kind: 'backhoe loader', serial: 'BL-6050-M', createdAtMs: 0 },
  ownerName: 'Ilse Marquet',
  hours: 6260,
  hoursAreEstimate: false,
  visitId: 'v',
  visitDate: '2026-06-08',
  visitOpen: true,
  complaint: 'Slow to crank.',
  tags: [],
  doNotOperate: false,
  unfinishedFindings: 0,
  shots: 0,
  found: null,
  touchedAtMs: 0,
};
const tag = (tier: Tier) => ({ findingId: String(tier), number: 1, tier, state: 'confirmed' as const });

describe('what a row of the floor says', () => {
  it.each<[string, Partial<FloorMachine>]>([
    ['No visit opened yet', { visitId: null }],
    ['Nothing looked at yet', {}],
    ['3 photos, no finding yet', { shots: 3 }],
    ['Notes only', { tags: [tag(4)] }],
    ['Will fail or cost more', { tags: [tag(4), tag(3)] }],
    ['Do not run', { tags: [tag(2), tag(3)] }],
    ['Do not operate', { tags: [tag(0)], doNotOperate: true }],
  ])('%s', (words, part) => {
    expect(floorHeadline({ ...machine, ...part })).toBe(words);
  });

  it('names machine, owner and hours', () => {
    expect(machineName(machine.machine)).toBe('Backhoe loader BL-6050-M');
    expect(floorOwner(machine)).toBe('Ilse Marquet, in since 8 June');
    expect(floorOwner({ ...machine, ownerName: null, visitDate: null })).toBe('');
    expect(plateHours(6260)).toBe('6\u202f260');
    expect(plateHours(6260, true)).toBe('about 6\u202f260');
    expect(plateHours(null)).toBe('');
  });
});

it.each([
  [1, '1st'],
  [2, '2nd'],
  [3, '3rd'],
  [4, '4th'],
  [11, '11th'],
  [12, '12th'],
  [21, '21st'],
  [112, '112th'],
])('place %d is the %s', (place, words) => {
  expect(placeWords(place)).toBe(words);
});

describe('a visit as it is opened', () => {
  it('keeps the hours as typed beside the number they mean', () => {
    const draft = { ...emptyVisitDraft('2026-06-08'), hours: ' 6 260 h ', complaint: ' Slow to crank. ' };
    expect(visitInput(draft, 'm', 'meter')).toMatchObject({
      complaint: 'Slow to crank.',
      meter: { meterId: 'meter', typed: '6 260 h', reading: 6260, estimate: false },
    });
  });

  it('keeps what is no number, and counts no hours from it', () => {
    const draft = { ...emptyVisitDraft('2026-06-08'), hours: '4 2,5,0' };
    expect(visitInput(draft, 'm', null).meter).toMatchObject({ typed: '4 2,5,0', reading: null });
  });

  it('says nothing of hours that nobody read', () => {
    expect(visitInput(emptyVisitDraft('2026-06-08'), 'm', null)).not.toHaveProperty('meter');
  });

  it.each([
    ['2026-06-08', true],
    ['2024-02-29', true],
    ['2026-02-29', false],
    ['2026-6-8', false],
    ['', false],
  ])('%s is a date: %s', (text, isOne) => {
    expect(isDate(text)).toBe(isOne);
  });
});

it('the meter on the machine is the one that nothing has ended', () => {
  const meter = (id: string, from: string | null, until: string | null) => ({
    id,
    machineId: 'm',
    name: id,
    offsetHours: 0,
    from,
    until,
    dead: false,
  });
  expect(meterInNow([meter('a', null, '2026-01-01'), meter('b', '2026-01-01', null)])?.id).toBe('b');
  expect(meterInNow([meter('a', null, null), meter('b', '2026-01-01', null)])?.id).toBe('b');
  expect(meterInNow([meter('a', null, '2026-01-01')])).toBeUndefined();
});
