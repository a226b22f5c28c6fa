import { defineConfig } from 'vitest/config';

const project = (name: string, timeout: number) => ({
  test: { name, include: [`tests/${name}/**/*.test.{ts,tsx}`], testTimeout: timeout, hookTimeout: timeout },
});

/** One project per kind of test; each mirrors the source tree below its folder. */
export default defineConfig({
  test: {
    projects: [
      project('unit', 10_000),
      project('reference', 20_000),
      project('recorder', 60_000),
      project('hostile', 120_000),
    ],
    reporters: ['default'],
  },
});
