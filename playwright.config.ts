import { defineConfig } from '@playwright/test';

/** The tests of the real window. Started by `npm run test:app`, which finds an Electron and a display for them. */
export default defineConfig({
  testDir: 'tests/app',
  testMatch: '**/*.spec.ts',
  outputDir: 'test-results/app',
  // One window at a time: two on one display take the focus from each other.
  workers: 1,
  timeout: 120_000,
  // A busy machine is slow, not wrong: what is waited for costs nothing when it comes at once.
  expect: { timeout: 20_000 },
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: 'test-results/app.json' }]],
});
