import { availableParallelism } from 'node:os';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { FileOrder } from './tests/support/file-order';

// A zone with clock changes that is not UTC: hidden use of the machine's zone shows up here.
// Set before the worker threads start, since a thread cannot change the zone of its process.
process.env.TZ = 'Europe/Berlin';

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)) } },
  oxc: { jsx: { runtime: 'automatic' } },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    environment: 'node',
    // The limit on requests has a test of its own; the fuzzers ask faster than it allows.
    env: { REQUESTS_PER_MINUTE: '0' },
    setupFiles: ['tests/support/setup.ts'],
    testTimeout: 30_000,
    // A database is made from nothing before some files.
    hookTimeout: 60_000,
    // The core keeps no state between calls, so files can share a thread's modules: loading them anew for each of the
    // files took half of the whole run.
    pool: 'threads',
    isolate: false,
    sequence: { sequencer: FileOrder },
    maxWorkers: availableParallelism(),
  },
});
