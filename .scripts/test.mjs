// `npm test`: everything that must hold, in one command. Installs and builds if needed.
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { getChromium } from './get-chromium.mjs';
import { buildIfNeeded, installIfNeeded, run } from './prepare.mjs';
import { ROOT } from './sources.mjs';
import { step } from './step.mjs';

const RESULTS = join(ROOT, '.cache', 'test-results');
/** Where the build looks first for what is known of types: what has just been checked is not checked again. */
const TYPES_KNOWN = join(ROOT, '.next', 'cache', '.tsbuildinfo');

function readJson(name) {
  const path = join(RESULTS, name);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null;
}

/** Sums what both runners counted; a runner that wrote no result counts as one failure. */
function count() {
  const unit = readJson('unit.json');
  const browser = readJson('browser.json');
  const sum = { passed: 0, failed: 0, skipped: 0 };
  if (unit) {
    sum.passed += unit.numPassedTests;
    sum.failed += unit.numFailedTests;
    sum.skipped += unit.numPendingTests + unit.numTodoTests;
  } else sum.failed += 1;
  if (browser) {
    sum.passed += browser.stats.expected;
    // A second try only shows that the first one was no accident of the test's own: it passes nothing.
    sum.failed += browser.stats.unexpected + browser.stats.flaky;
    sum.skipped += browser.stats.skipped;
  } else sum.failed += 1;
  return sum;
}

await installIfNeeded();
const chromium = await getChromium();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
if (!existsSync('/usr/lib/postgresql'))
  console.log('PostgreSQL is not installed: what boards keep is tried on the file engine only.');
const started = Date.now();
await run('npx', ['--no-install', 'next', 'typegen'], { NEXT_TELEMETRY_DISABLED: '1' });
const checks = [
  await step('types', 'npx', [
    '--no-install',
    'tsc',
    '--noEmit',
    '-p',
    '.',
    '--tsBuildInfoFile',
    TYPES_KNOWN,
  ]),
  await step('lint', 'npx', ['--no-install', 'biome', 'ci', '--error-on-warnings', '.']),
  await step('unit, reference, API', 'npx', [
    '--no-install',
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${join(RESULTS, 'unit.json')}`,
  ]),
];
await buildIfNeeded();
checks.push(
  await step('browser', 'npx', ['--no-install', 'playwright', 'test'], {
    CHROMIUM_PATH: chromium,
    PLAYWRIGHT_JSON_OUTPUT_NAME: join(RESULTS, 'browser.json'),
  }),
);
const sum = count();
console.log(`\nall checks took ${((Date.now() - started) / 1000).toFixed(0)} s`);
const skipped = sum.skipped > 0 ? `, ${sum.skipped} skipped` : '';
console.log(`${sum.passed} passed, ${sum.failed} failed${skipped}`);
process.exit(checks.every(Boolean) && sum.failed === 0 ? 0 : 1);
