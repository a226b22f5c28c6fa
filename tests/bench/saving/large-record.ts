import { mutate } from '../../../electron/recorder/journal/record-writer.ts';
import type { InputOf } from '../../../shared-lib/contract/operations.ts';
import { loaderLayout } from '../../support/loader-layout.ts';
import type { UnsyncedRecorder } from './unsynced-recorder.ts';

const kinds = ['skid loader', 'lift truck', 'field tractor', 'stationary engine'];
const places = [
  'ENG/HD.1/EVS.3.1',
  'ENG/LNR.2',
  'COOL/RAD',
  'HYD/HOSE.boom.L',
  'ENG/PST.1',
  'ENG/HD.1',
  'COOL/HOSE.upper',
  'ELEC/GND.1',
];

type Judged = Omit<InputOf<'finding.add'>, 'visitId'>;

/** A finding with everything said that a mechanic says of one; each number says something else. */
const judged = (number: number, at: readonly string[]): Judged => ({
  kind: 'condition',
  words: `seen when the part was cleaned, entry ${number}`,
  state: number % 3 === 0 ? 'suspected' : 'confirmed',
  methods: ['V'],
  defect: number % 2 === 0 ? 'crack' : 'pitting',
  locations: [at[number % at.length] ?? 'ENG'],
  safety: number % 4 === 0 ? { severity: 2, probability: 'C' } : 'none',
  urgency: 2,
  runWorse: number % 2 === 0,
  damageClass: 3,
  ifLeft: 'it gets worse with every hour',
});

export interface LargeRecordPlan {
  readonly machines: number;
  readonly findingsEach: number;
}

/** Machines with one open visit each. */
export const addMachines = async (
  { call }: UnsyncedRecorder,
  { machines, findingsEach }: LargeRecordPlan,
): Promise<void> => {
  for (let index = 0; index < machines; index += 1) {
    const page = await call('machine.add', {
      plate: { kind: kinds[index % kinds.length] ?? '', serial: `BN ${String(index).padStart(5, '0')}` },
      layout: loaderLayout,
      owner: { name: `Owner ${index % 300}`, kind: 'person', capacity: 'owner' },
    });
    const { visit } = await call('visit.open', {
      machineId: page.machine.id,
      date: '2026-05-11',
      complaint: 'Uses water and smokes white when cold.',
    });
    for (let number = 0; number < findingsEach; number += 1) {
      await call('finding.add', { visitId: visit.id, ...judged(index + number, places) });
    }
  }
};

export interface LargeVisitPlan {
  readonly findings: number;
  readonly shots: number;
  readonly marks: number;
}

/** One machine with a visit of many findings, shots and marks. */
export const addLargeVisit = async (recorder: UnsyncedRecorder, plan: LargeVisitPlan): Promise<string> => {
  const { call } = recorder;
  const page = await call('machine.add', { plate: { kind: 'crane', serial: 'BN LARGE' }, layout: loaderLayout });
  const { visit } = await call('visit.open', { machineId: page.machine.id, date: '2026-05-11' });
  const findingIds: string[] = [];
  for (let number = 0; number < plan.findings; number += 1) {
    const finding = await call('finding.add', { visitId: visit.id, ...judged(number, places) });
    findingIds.push(finding.id);
  }
  const shotIds = addShots(recorder, visit.id, plan.shots);
  for (let number = 0; number < plan.marks; number += 1) {
    await call('mark.add', {
      shotId: shotIds[number % shotIds.length] ?? '',
      shape: 'path',
      points: Array.from({ length: 12 }, (_, step) => ({ x: 200 + step * 40, y: 300 + ((number + step) % 9) * 10 })),
      findingId: findingIds[number % findingIds.length] ?? null,
    });
  }
  return visit.id;
};

/** Rows only: the bytes of the photos are not read by what is measured. */
const addShots = ({ db }: UnsyncedRecorder, visitId: string, count: number): string[] => {
  const author = {
    personId: null,
    windowId: 'bench',
    operation: 'shot.take',
    undoable: true,
    stepId: 'bench',
    reverses: null,
    atMs: 0,
    zoneOffsetMin: 0,
  };
  const ids = Array.from({ length: count }, (_, index) => `shot-${index}`);
  mutate(db, author, (writer) => {
    for (const [index, id] of ids.entries()) {
      const digest = index.toString(16).padStart(64, '0');
      writer.insert('original', {
        digest,
        byte_length: 4_000_000,
        media_type: 'image/jpeg',
        width: 4000,
        height: 3000,
        orientation: 1,
        camera: null,
        remark: null,
      });
      writer.insert('shot', {
        id,
        visit_id: visitId,
        digest,
        sequence: index + 1,
        offered_name: `IMG_${index}.jpg`,
        caption: '',
        component: null,
        seen_from: '',
        taken_at_ms: null,
        taken_zone_min: null,
        taken_source: null,
        taken_local: null,
        camera: null,
        clock_offset_ms: 0,
        taken_by: null,
        binned: 0,
      });
    }
  });
  return ids;
};
