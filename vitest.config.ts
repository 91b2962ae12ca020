import { defineConfig, type TestProjectInlineConfiguration } from 'vitest/config';

/** Values in, values out: their files share a process, which saves loading the same modules a hundred times. */
const PURE = ['domain', 'document', 'contract', 'published'].map((room) => `tests/${room}/**/*.test.{ts,tsx}`);
/** The service over real databases; each file has databases of its own, and the process is shared. */
const SERVED = ['http', 'store'].map((room) => `tests/${room}/**/*.test.ts`);
/** Those of them that put other modules in place of ours, or close and copy databases under everybody. */
const ALONE = ['tests/http/one-edit.test.ts', 'tests/store/migrate.test.ts', 'tests/store/back-up.test.ts'];

const common: TestProjectInlineConfiguration['test'] = {
  pool: 'forks',
  setupFiles: ['tests/support/fail-on-console-error.ts'],
  testTimeout: 30_000,
  // The first file that asks for PostgreSQL also waits until its server is made.
  hookTimeout: 60_000,
};

export default defineConfig({
  test: {
    reporters: ['default', './tests/support/count-reporter.ts'],
    maxWorkers: 2,
    globalSetup: ['tests/support/postgres-broker.ts'],
    projects: [
      // A process per file: browsers, scripts and native code, where a fault in one file must not reach another.
      { test: { ...common, name: 'apart', include: ['tests/**/*.test.{ts,tsx}'], exclude: [...PURE, ...SERVED] } },
      { test: { ...common, name: 'alone', include: ALONE } },
      { test: { ...common, name: 'served', include: SERVED, exclude: ALONE, isolate: false } },
      { test: { ...common, name: 'pure', include: PURE, isolate: false } },
    ],
  },
});
