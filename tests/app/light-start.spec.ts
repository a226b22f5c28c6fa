import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { neededLater, packagesAtStart } from '../support/start/packages-at-start.ts';

test('the recorder that the window starts is ready without the libraries of photos, reports and seals', async () => {
  const script = join(import.meta.dirname, '../../dist/recorder/main.js');
  const packages = await packagesAtStart(script, test.info().outputPath('data'));
  expect(packages).toContain('better-sqlite3');
  // Bundled, so known by the source map alone: without one, nothing could be found missing.
  expect(packages).toContain('zod');
  for (const name of neededLater) expect(packages).not.toContain(name);
});
