import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test, vi } from 'vitest';
import { readWindowState, writeWindowState } from '../../../../electron/shell/window-state.ts';

const folder = mkdtempSync(join(tmpdir(), 'window-state '));
const file = join(folder, 'window.json');
afterAll(() => rmSync(folder, { recursive: true }));

test('a window comes back where it stood', () => {
  const state = { x: -1200, y: 40, width: 1400, height: 900, isMaximized: true };
  writeWindowState(file, state);
  expect(readWindowState(file)).toEqual(state);
});

test.each([[''], ['{'], ['null'], ['[]'], ['{"x":1,"y":2,"width":3}'], ['{"x":1,"y":2,"width":3,"height":"4"}']])(
  'a file that holds %j is as good as none',
  (text) => {
    writeFileSync(file, text);
    expect(readWindowState(file)).toBeNull();
  },
);

test('no file is a first start', () => {
  expect(readWindowState(join(folder, 'absent.json'))).toBeNull();
});

test('a folder that cannot be written keeps no window from closing', () => {
  const said = vi.spyOn(console, 'error').mockImplementation(() => undefined);
  writeWindowState(join(folder, 'no/such/folder/window.json'), { x: 0, y: 0, width: 1, height: 1, isMaximized: false });
  expect(said).toHaveBeenCalledOnce();
  said.mockRestore();
});
