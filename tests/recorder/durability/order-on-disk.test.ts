import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import { addLoader, openTestRecorder } from '../../support/test-recorder.ts';
import { digestOfFile, fixture } from '../photos/photo-room.ts';
import { startRecorder } from './start-recorder.ts';
import { callsIn, inOrder } from './system-calls.ts';

const hasStrace = spawnSync('strace', ['-V'], { stdio: 'ignore' }).status === 0;
const traced = 'trace=fsync,fdatasync,rename,renameat,renameat2,write,writev,pwrite64,sendmsg,sendto';
const photo = fixture('gps.jpg');
const words = 'a crack that must not be lost';

const channel = (text: string): RegExp =>
  new RegExp(`^(write|writev|sendmsg|sendto)\\(\\d+<[^>]*(socket|UNIX)[^>]*>.*${text}`);
const logWrite = /^pwrite64\(\d+<[^>]*record\.sqlite-wal>/;
const logSync = /^f(data)?sync\(\d+<[^>]*record\.sqlite-wal>/;

it.skipIf(!hasStrace)(
  'says that a photo or a finding is done only after it is on the disk (skipped without strace)',
  async () => {
    // A plain name: the tracer writes other letters as escapes.
    const folder = mkdtempSync(join(tmpdir(), 'order-on-disk-'));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const dataFolder = join(folder, 'record');
    const bench = openTestRecorder(dataFolder);
    const { visitId } = await addLoader(bench);
    await bench.recorder.close();

    const trace = join(folder, 'trace');
    const tracer = ['strace', '-f', '-yy', '-s', '4000', '-e', traced, '-o', trace];
    const child = await startRecorder(dataFolder, tracer);
    child.send({ kind: 'offer', offer: { token: 'photo', path: photo, for: 'read' } });
    await child.call('shot.take', { visitId, tokens: ['photo'] });
    await child.event((event) => event.event === 'import' && event.ended === 'complete');
    await child.call('finding.add', { visitId, kind: 'condition', words });
    child.send({ kind: 'stop' });
    await child.ended;
    const calls = callsIn(readFileSync(trace, 'utf8'));

    const digest = digestOfFile(photo);
    const shelf = join(dataFolder, 'originals', digest.slice(0, 2));
    const incoming = `${dataFolder}/originals/incoming/[^>"]+\\.part`;
    const taken = inOrder(
      calls,
      ['file sync', new RegExp(`^f(data)?sync\\(\\d+<${incoming}>`)],
      ['rename', new RegExp(`^rename.*"${incoming}".*"${shelf}/${digest}"`)],
      ['folder sync', new RegExp(`^fsync\\(\\d+<${shelf}>`)],
      ['write of the log', logWrite],
      ['sync of the log', logSync],
      ['message of the photo', channel(digest)],
    );
    // Nothing of the photo was written after its sync, and nothing was said of it before the last step.
    expect(
      calls.findLast(({ text }) => new RegExp(`^p?write\\S*\\(\\d+<${incoming}>`).test(text))?.endedAt,
    ).toBeLessThan(taken[0]?.begunAt ?? -1);
    expect(calls.find(({ text }) => channel(digest).test(text))).toBe(taken.at(-1));

    const saved = inOrder(
      calls.filter(({ begunAt }) => begunAt > (taken.at(-1)?.endedAt ?? Number.POSITIVE_INFINITY)),
      ['write of the finding into the log', new RegExp(`${logWrite.source}.*${words}`)],
      ['sync of the log', logSync],
      ['answer', channel(words)],
    );
    const [written, , answered] = saved;
    expect(calls.find(({ text }) => channel(words).test(text))).toBe(answered);
    // The last write of that commit, not only its first, was synced before the answer.
    const between = calls.filter(
      ({ begunAt, endedAt }) => begunAt > (written?.endedAt ?? 0) && endedAt < (answered?.begunAt ?? 0),
    );
    const lastWrite = between.findLast(({ text }) => logWrite.test(text)) ?? written;
    const lastSync = between.findLast(({ text }) => logSync.test(text));
    expect(lastSync?.begunAt).toBeGreaterThan(lastWrite?.endedAt ?? Number.POSITIVE_INFINITY);
  },
);
