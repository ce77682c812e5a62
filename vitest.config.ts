import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  resolve: { alias: { '@': fileURLToPath(new URL('.', import.meta.url)) } },
  oxc: { jsx: { runtime: 'automatic' } },
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    exclude: ['tests/browser/**', 'node_modules/**'],
    environment: 'node',
    // A zone with clock changes that is not UTC: hidden use of the machine's zone shows up here.
    // The limit on requests has a test of its own; the fuzzers ask faster than it allows.
    env: { TZ: 'Europe/Berlin', REQUESTS_PER_MINUTE: '0' },
    setupFiles: ['tests/support/setup.ts'],
    testTimeout: 30_000,
  },
});
