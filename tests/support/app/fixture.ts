/**
 * The real program for a Playwright test: a fresh data folder whose path has spaces and letters of other scripts, the
 * real shell and recorder, the real window. An error in the page's console fails the test; a picture of the window is
 * kept when a test fails; nothing may still run when a test is over.
 *
 *   import { expect, test } from '../support/app/fixture.ts';
 *
 *   test('a machine is added', async ({ program }) => {
 *     await program.page.getByRole('button', { name: 'New machine' }).click();
 *     ...
 *   });
 *
 *   test.use({ windowSize: { width: 1920, height: 1080 } });     // the default is 1366 x 768
 *
 * `program` is described in program.ts: `call` sets a scene through the contract, `chooseFiles` and `saveAs` answer the
 * dialogs, `pickFromMenu` the menu, `picture` writes test-results/pictures, `killRecorder` and `killShell` do what they
 * say. A test that kills the shell goes on with `const again = await launch()`, on the same folder. A test that
 * provokes errors names them: `program.allowErrors(/503/)`. `seriousViolations(program.page)` in accessibility.ts asks
 * axe-core. Page objects extend Place (place.ts): locators by role, no assertions, the next place returned.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as base, expect } from '@playwright/test';
import { Program, type WindowSize } from './program.ts';

interface Fixtures {
  windowSize: WindowSize;
  /** Holds everything of one test: `record` is the data folder, the rest is free for the test's own files. */
  folder: string;
  program: Program;
  /** Opens the program once more on the test's folder; a size of null leaves the window as it opens. */
  launch: (size?: WindowSize | null) => Promise<Program>;
}

export const test = base.extend<Fixtures & { launched: Program[] }>({
  windowSize: [{ width: 1366, height: 768 }, { option: true }],

  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads what a fixture needs from this pattern
  folder: async ({}, use) => {
    const folder = mkdtempSync(join(tmpdir(), 'Wérk Šhöp 数据 '));
    await use(folder);
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  },

  // Asks for the folder, though it has no use for it: what is launched must end before its folder goes.
  launched: async ({ folder: _ }, use, testInfo) => {
    const launched: Program[] = [];
    await use(launched);
    const hasFailed = testInfo.status !== testInfo.expectedStatus;
    for (const [at, program] of launched.entries()) {
      if (hasFailed && !program.page.isClosed()) {
        const body = await program.page.screenshot().catch(() => null);
        if (body) await testInfo.attach(`window-${at + 1}`, { body, contentType: 'image/png' });
      }
      await program.close();
    }
    expect(launched.flatMap((program) => program.unexpectedErrors())).toEqual([]);
  },

  launch: async ({ launched, folder, windowSize }, use) => {
    await use(async (size = windowSize) => {
      const program = await Program.launch(folder, size);
      launched.push(program);
      return program;
    });
  },

  program: async ({ launch }, use) => {
    await use(await launch());
  },
});

export { expect };
