import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import { openRecorder, type Recorder } from '../../electron/recorder/open-recorder.ts';
import type { RecorderEvent } from '../../shared-lib/contract/events.ts';
import type { InputOf, OperationName, OutputOf } from '../../shared-lib/contract/operations.ts';
import { loaderLayout } from './loader-layout.ts';

/** A folder of its own, with a name that a careless path would trip over; gone when the test is. */
export const freshFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'Wérk Šhöp 数据 '));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
};

export interface TestRecorder {
  readonly recorder: Recorder;
  readonly dataFolder: string;
  readonly events: RecorderEvent[];
  /** Calls as a window; throws what the window would be told. */
  as(windowId: string): <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;
  readonly call: <N extends OperationName>(name: N, input: InputOf<N>) => Promise<OutputOf<N>>;
}

/** The real recorder on a real folder; the clock ticks a second a look. */
export const openTestRecorder = (dataFolder = freshFolder()): TestRecorder => {
  const events: RecorderEvent[] = [];
  let now = Date.UTC(2026, 4, 11, 8, 0, 0);
  const recorder = openRecorder({
    dataFolder,
    program: 'tests',
    clock: () => {
      now += 1000;
      return now;
    },
    emit: (event) => events.push(event),
  });
  onTestFinished(() => recorder.close());
  const as =
    (windowId: string) =>
    async <N extends OperationName>(name: N, input: InputOf<N>): Promise<OutputOf<N>> => {
      const answer = await recorder.dispatch(windowId, name, input);
      if (!answer.ok) throw Object.assign(new Error(answer.error.code), { wire: answer.error });
      return answer.output as OutputOf<N>;
    };
  return { recorder, dataFolder, events, as, call: as('window-1') };
};

export const addLoader = async ({ call }: Pick<TestRecorder, 'call'>, serial = 'TL-0001') => {
  const page = await call('machine.add', {
    plate: { kind: 'test loader', serial },
    layout: loaderLayout,
    owner: { name: 'Nils Aspen', kind: 'person', capacity: 'owner' },
  });
  const record = await call('visit.open', { machineId: page.machine.id, date: '2026-05-11', complaint: 'Uses water.' });
  return { machineId: page.machine.id, visitId: record.visit.id, page, record };
};
