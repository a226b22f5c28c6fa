/**
 * Saving while a long report is typeset: a field of a finding is changed again and again, over the recorder's own
 * channel, before and during the print of some 121 pages. A bare commit beside it, in turns, tells what the disk and
 * the rest of the machine have to do with it.
 *
 *   node tests/bench/typesetting/run.ts
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as pause } from 'node:timers/promises';
import { type RecorderChild, runRecorder } from '../../recorder/durability/recorder-child.ts';
import { quantile, timed } from '../ratio.ts';
import { type BareCommit, openBareCommit } from '../saving/bare-commit.ts';
import { makeLongVisit } from './long-visit.ts';

const findings = Number(process.argv[2] ?? 176);
const savesBefore = 60;
const betweenMs = 25;

const saver = (child: RecorderChild, findingId: string) => {
  let count = 0;
  return async (): Promise<number> => {
    count += 1;
    const began = performance.now();
    await child.call('finding.change', { id: findingId, words: `seen again, time ${count}` });
    return performance.now() - began;
  };
};

const line = (what: string, times: readonly number[]): string =>
  `${what}: median ${quantile(times, 0.5).toFixed(1)} ms, p95 ${quantile(times, 0.95).toFixed(1)} ms, most ${Math.max(...times).toFixed(1)} ms over ${times.length}`;

const measure = async (child: RecorderChild, bare: BareCommit, folder: string): Promise<void> => {
  const visitId = await makeLongVisit(child, folder, findings);
  const { findings: found } = await child.call('visit.get', { id: visitId });
  const save = saver(child, found[0]?.id ?? '');
  const saves: number[] = [];
  const commits: number[] = [];
  const turn = async (): Promise<void> => {
    saves.push(await save());
    await pause(betweenMs);
    commits.push(await timed(bare.commit));
    await pause(betweenMs);
  };
  const print = (when: string): void => {
    console.log(line(`a save ${when}`, saves.splice(0)));
    console.log(line(`a bare commit ${when}`, commits.splice(0)));
  };
  for (let count = 0; count < savesBefore; count += 1) await turn();
  print('before it');

  child.send({ kind: 'offer', offer: { token: 'print', path: join(folder, 'long.pdf'), for: 'write' } });
  const began = performance.now();
  let isPrinting = true;
  const printing = child.call('report.print', { visitId, token: 'print' }).finally(() => {
    isPrinting = false;
  });
  while (isPrinting) await turn();
  const { pages } = await printing;
  console.log(`${pages} pages typeset in ${((performance.now() - began) / 1000).toFixed(1)} s`);
  print('meanwhile');
  console.log(
    `load ${loadavg()
      .map((value) => value.toFixed(1))
      .join(' ')}`,
  );
};

const folder = mkdtempSync(join(tmpdir(), 'bench-typesetting-'));
const bare = openBareCommit(folder);
const child = await runRecorder(join(folder, 'record'));
try {
  await measure(child, bare, folder);
} finally {
  child.process.disconnect();
  await child.ended;
  bare.close();
  rmSync(folder, { recursive: true, force: true });
}
