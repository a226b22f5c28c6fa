import { readdirSync, readFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { checkRecord } from '../../../electron/recorder/check.ts';
import { openRecorder } from '../../../electron/recorder/open-recorder.ts';
import { addLoader, freshFolder, openTestRecorder } from '../../support/test-recorder.ts';
import { fixture } from '../photos/photo-room.ts';
import type { RecorderChild } from './recorder-child.ts';
import { startRecorder } from './start-recorder.ts';

const isLinux = process.platform === 'linux';
const patienceMs = 15_000;

/** A folder with letters of other scripts and spaces in its name, and an open visit in it. */
const folderWithVisit = async (): Promise<{ dataFolder: string; visitId: string }> => {
  const bench = openTestRecorder(freshFolder());
  const { visitId } = await addLoader(bench);
  await bench.recorder.close();
  return { dataFolder: bench.dataFolder, visitId };
};

/** Opens at once, as the next program would; throws while somebody holds the folder. */
const openNext = (dataFolder: string) => openRecorder({ dataFolder, program: 'the next one' });

const soundAndFree = async (dataFolder: string) => {
  const recorder = openNext(dataFolder);
  try {
    expect((await checkRecord(recorder)).problems).toEqual([]);
    return await recorder.call('machine.floor', {});
  } finally {
    await recorder.close();
  }
};

const childrenOf = (pid: number | undefined): number[] =>
  readdirSync('/proc')
    .filter((name) => /^\d+$/.test(name))
    .filter((name) => parentOf(name) === pid)
    .map(Number);

/** Undefined for one that is gone, or dead and not yet looked at. */
const parentOf = (pid: string | number): number | undefined => {
  try {
    const [state, parent] = readFileSync(`/proc/${pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    return state === 'Z' ? undefined : Number(parent);
  } catch {
    return undefined;
  }
};

const until = async (is: () => boolean): Promise<void> => {
  const deadline = Date.now() + patienceMs;
  while (!is()) {
    if (Date.now() > deadline) throw new Error('waited in vain');
    await pause(20);
  }
};

const takeIn = (child: RecorderChild, visitId: string, names: readonly string[]) => {
  for (const name of names) child.send({ kind: 'offer', offer: { token: name, path: fixture(name), for: 'read' } });
  return child.call('shot.take', { visitId, tokens: [...names] });
};

describe('a recorder that ends suddenly', () => {
  it('in the middle of its replies has kept all that it had answered', async () => {
    const { dataFolder, visitId } = await folderWithVisit();
    const child = await startRecorder(dataFolder);
    const kept: string[] = [];
    const large = 'x'.repeat(1900);
    // Replies too long for the channel's buffer, so that some are half written when it is killed.
    const calls = Array.from({ length: 100 }, async (_, number) => {
      const finding = await child.call('finding.add', { visitId, kind: 'condition', words: `${number} ${large}` });
      kept.push(finding.words);
      if (kept.length === 20) child.process.kill('SIGKILL');
    });
    const outcomes = await Promise.allSettled(calls);
    await child.ended;
    expect(outcomes.filter(({ status }) => status === 'rejected').length).toBeGreaterThan(0);
    expect(kept.length).toBeGreaterThanOrEqual(20);

    await soundAndFree(dataFolder);
    const recorder = openNext(dataFolder);
    try {
      const there = new Set((await recorder.call('visit.get', { id: visitId })).findings.map(({ words }) => words));
      expect(kept.filter((words) => !there.has(words))).toEqual([]);
    } finally {
      await recorder.close();
    }
  });

  it.skipIf(!isLinux)('leaves no decoder behind (skipped where there is no /proc)', async () => {
    const { dataFolder, visitId } = await folderWithVisit();
    const child = await startRecorder(dataFolder);
    await takeIn(child, visitId, ['Landscape_6.jpg', 'gps.jpg', 'orient-bigendian.jpg']);
    await until(() => childrenOf(child.process.pid).length > 0);
    const decoders = childrenOf(child.process.pid);
    await child.kill();
    await until(() => decoders.every((pid) => parentOf(pid) === undefined));
    await soundAndFree(dataFolder);
  });
});

// What the shell's own sudden end looks like from here: the channel closes.
describe('a recorder whose shell is gone', () => {
  it('ends in the middle of an import, and the next one takes the rest in', async () => {
    const { dataFolder, visitId } = await folderWithVisit();
    const child = await startRecorder(dataFolder);
    await takeIn(child, visitId, ['Landscape_6.jpg', 'gps.jpg', 'orient-bigendian.jpg', 'phone-rotated.heic']);
    child.process.disconnect();
    await child.ended;
    await soundAndFree(dataFolder);

    const next = await startRecorder(dataFolder);
    await takeIn(next, visitId, ['Landscape_6.jpg', 'gps.jpg', 'orient-bigendian.jpg', 'phone-rotated.heic']);
    await next.event((event) => event.event === 'import' && event.ended === 'complete');
    expect((await next.call('visit.get', { id: visitId })).shots).toHaveLength(4);
  });

  it('ends while it typesets, without waiting for the report', async () => {
    const { dataFolder, visitId } = await folderWithVisit();
    const child = await startRecorder(dataFolder);
    for (let number = 0; number < 100; number += 1) {
      await child.call('finding.add', { visitId, kind: 'condition', words: `worn part ${number} `.repeat(20) });
    }
    const began = performance.now();
    await child.call('report.preview', { visitId });
    const typesetMs = performance.now() - began;
    // On other paper every page is typeset anew.
    const again = child.call('report.preview', { visitId, paper: 'us-letter' });
    const unanswered = again.catch((error: Error) => error.message);
    await pause(typesetMs / 10);
    const left = performance.now();
    child.process.disconnect();
    await child.ended;
    // Most of the typesetting was still to come.
    expect(performance.now() - left).toBeLessThan(typesetMs / 2);
    expect(await unanswered).toBe('recorder-stopped');
    await soundAndFree(dataFolder);
  });
});
