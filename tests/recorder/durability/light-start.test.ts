import { join } from 'node:path';
import { expect, it } from 'vitest';
import { neededLater, packagesAtStart } from '../../support/start/packages-at-start.ts';
import { freshFolder } from '../../support/test-recorder.ts';

it('is ready without the libraries of photos, reports and seals: they are loaded when they are needed', async () => {
  const script = join(import.meta.dirname, '../../../electron/recorder/main.ts');
  const packages = await packagesAtStart(script, freshFolder());
  expect(packages).toContain('better-sqlite3');
  for (const name of neededLater) expect(packages).not.toContain(name);
});
