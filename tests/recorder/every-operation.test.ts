import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { handlers } from '../../electron/recorder/handlers.ts';
import { operations } from '../../shared-lib/contract/operations.ts';
import { shellOperations } from '../../shared-lib/contract/shell.ts';
import { openTestRecorder } from '../support/test-recorder.ts';

it('every operation of the contract has a handler, but for those that the shell answers', () => {
  const names = Object.keys(operations).filter((name) => !(name in shellOperations));
  expect(Object.keys(handlers).sort()).toEqual(names.sort());
});

it('an input that does not fit is refused by name of its field, before anything is done', async () => {
  const { recorder } = openTestRecorder();
  const answer = await recorder.dispatch('window-1', 'machine.add', { plate: { kind: '', serial: 'X' } });
  expect(answer).toMatchObject({ ok: false, error: { code: 'invalid-input', field: 'plate.kind' } });
  expect(await recorder.dispatch('window-1', 'machine.explode', {})).toMatchObject({
    ok: false,
    error: { code: 'unknown-operation' },
  });
  expect(await recorder.dispatch('window-1', 'toString', {})).toMatchObject({
    ok: false,
    error: { code: 'unknown-operation' },
  });
});

it('writes one line a call into the log, without what was typed', async () => {
  const { call, dataFolder } = openTestRecorder();
  await call('person.add', { name: 'Ada Quill', trade: 'mechanic' });
  const log = readFileSync(join(dataFolder, 'recorder.log'), 'utf8');
  expect(log).toMatch(/person\.add done \d+\.\d ms/);
  expect(log).not.toContain('Ada Quill');
});
