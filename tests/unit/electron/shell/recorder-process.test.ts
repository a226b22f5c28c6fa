import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { RecorderProcess } from '../../../../electron/shell/recorder-process.ts';
import type { RecorderEvent } from '../../../../shared-lib/contract/events.ts';

const script = join(import.meta.dirname, '../../../support/shell/fake-recorder.ts');
const windowId = 'window';

let dataFolder: string;
let events: RecorderEvent[];
let recorder: RecorderProcess;

beforeEach(() => {
  dataFolder = mkdtempSync(join(tmpdir(), 'Wérk Šhöp 数据 '));
  events = [];
  recorder = new RecorderProcess({
    node: process.execPath,
    script,
    dataFolder,
    onEvent: (event) => events.push(event),
  });
});

afterEach(async () => {
  await recorder.stop();
  rmSync(dataFolder, { recursive: true, force: true });
});

const call = (name: string, input: unknown = null) => recorder.call({ windowId, name, input });
const states = () => events.map((event) => (event.event === 'recorder' ? event.state : event.event));
const heard = (state: string) => vi.waitFor(() => expect(states()).toContain(state), { timeout: 8000 });

describe('relaying', () => {
  test('a call made while the recorder is still starting is answered, with its window and its bytes', async () => {
    recorder.start();
    const input = { text: 'пальцы 数据', bytes: new Uint8Array([0, 255]) };
    expect(await call('echo', input)).toEqual({ ok: true, output: { windowId, input } });
  });

  test('a hundred calls at once each get their own answer', async () => {
    recorder.start();
    const answers = await Promise.all(Array.from({ length: 100 }, (_, at) => call('echo', at)));
    expect(answers).toEqual(Array.from({ length: 100 }, (_, at) => ({ ok: true, output: { windowId, input: at } })));
  });

  test('a token is known to the recorder before the call that uses it', async () => {
    recorder.start();
    recorder.offer({ token: 'one', path: '/photos/a b.jpg', for: 'read' });
    expect(await call('path-of-token', 'one')).toEqual({ ok: true, output: '/photos/a b.jpg' });
  });

  test('a photo is located, or not', async () => {
    recorder.start();
    expect(await recorder.locatePhoto('photo://store/known')).toMatchObject({ path: '/store/known' });
    expect(await recorder.locatePhoto('photo://store/other')).toMatchObject({ path: null });
  });

  test('options meant for another Node do not reach the recorder', async () => {
    vi.stubEnv('NODE_OPTIONS', '--max-old-space-size=77');
    vi.stubEnv('ELECTRON_RUN_AS_NODE', '1');
    recorder.start();
    vi.unstubAllEnvs();
    expect(await call('environment')).toEqual({ ok: true, output: { node: process.versions.node } });
  });
});

describe('a recorder that dies', () => {
  for (const name of ['die-before-replying', 'die-while-replying']) {
    test(`${name}: the call is refused, the window is told, and the next recorder works`, async () => {
      recorder.start();
      await heard('running');
      const others = [call('never'), recorder.locatePhoto('photo://store/known')];
      expect(await call(name)).toEqual({ ok: false, error: { code: 'recorder-stopped', details: {} } });
      await Promise.all(others);
      await heard('restarted');
      expect(states()).toEqual(['running', 'gone', 'restarted']);
      expect(events[1]).toMatchObject({ reason: 'SIGKILL' });
      expect(await call('echo', 1)).toMatchObject({ ok: true });
    });
  }

  test('calls and photos are refused at once while it is gone', async () => {
    recorder.start();
    await call('die-before-replying');
    expect(await call('echo')).toEqual({ ok: false, error: { code: 'recorder-stopped', details: {} } });
    expect(await recorder.locatePhoto('photo://store/known')).toBe('recorder-stopped');
  });

  test('a Node binary that is not there is a death like any other', async () => {
    recorder = new RecorderProcess({
      node: join(dataFolder, 'no-such-node'),
      script,
      dataFolder,
      onEvent: (event) => events.push(event),
    });
    recorder.start();
    expect(await call('echo')).toMatchObject({ ok: false, error: { code: 'recorder-stopped' } });
    expect(states()).toContain('gone');
  });
});

describe('a folder that cannot be opened', () => {
  test('the reason answers every call, and a later call tries again', async () => {
    writeFileSync(join(dataFolder, 'held'), '');
    recorder.start();
    const refusal = { ok: false, error: { code: 'folder-held', details: { holder: 'other' } } };
    expect(await call('echo')).toEqual(refusal);
    await heard('gone');
    expect(await call('echo')).toEqual(refusal);
    rmSync(join(dataFolder, 'held'));
    await vi.waitFor(async () => expect(await call('echo', 1)).toMatchObject({ ok: true }), {
      timeout: 8000,
      interval: 200,
    });
    expect(states()).toEqual(['gone', 'running']);
  });
});

test('stopping lets it exit and does not start another', async () => {
  recorder.start();
  await heard('running');
  await recorder.stop();
  recorder.start();
  expect(await call('echo')).toMatchObject({ ok: false });
  expect(states()).toEqual(['running']);
});
