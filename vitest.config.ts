import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    // A process per file: better-sqlite3 is native code, and a fault in one file must not reach another.
    pool: 'forks',
    reporters: ['default', './tests/support/count-reporter.ts'],
    maxWorkers: 2,
    globalSetup: ['tests/support/postgres-broker.ts'],
    setupFiles: ['tests/support/fail-on-console-error.ts'],
    testTimeout: 30_000,
    // The first file that asks for PostgreSQL also waits until its server is made.
    hookTimeout: 60_000,
  },
});
