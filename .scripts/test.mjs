// `npm test`: everything that must hold, in one command. Installs and builds if needed.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { buildIfNeeded, installIfNeeded, ROOT, run } from './prepare.mjs';

const RESULTS = join(ROOT, '.cache', 'test-results');
// The shell without windows first: the same engine for half the processor time.
const CHROMIUM_PLACES = [
  process.env.CHROMIUM_PATH,
  '/usr/bin/chromium-headless-shell',
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
];

function findChromium() {
  const found = CHROMIUM_PLACES.find((path) => path && existsSync(path));
  if (found) return found;
  console.error(
    'The browser tests need Chromium. On Debian: apt-get install chromium-headless-shell. Elsewhere set CHROMIUM_PATH to a Chromium or Chrome program.',
  );
  process.exit(1);
}

function step(title, command, args, env = {}) {
  const started = Date.now();
  console.log(`\n== ${title}`);
  const { status } = spawnSync(command, args, {
    cwd: ROOT,
    stdio: 'inherit',
    env: { ...process.env, ...env },
  });
  console.log(
    `-- ${title}: ${status === 0 ? 'ok' : 'FAILED'} in ${((Date.now() - started) / 1000).toFixed(1)} s`,
  );
  return status === 0;
}

function readJson(name) {
  const path = join(RESULTS, name);
  return existsSync(path) ? JSON.parse(readFileSync(path, 'utf8')) : null;
}

/** Sums what both runners counted; a runner that wrote no result counts as one failure. */
function count() {
  const unit = readJson('unit.json');
  const browser = readJson('browser.json');
  const sum = { passed: 0, failed: 0, skipped: 0, twice: 0 };
  if (unit) {
    sum.passed += unit.numPassedTests;
    sum.failed += unit.numFailedTests;
    sum.skipped += unit.numPendingTests + unit.numTodoTests;
  } else sum.failed += 1;
  if (browser) {
    sum.passed += browser.stats.expected + browser.stats.flaky;
    sum.failed += browser.stats.unexpected;
    sum.skipped += browser.stats.skipped;
    sum.twice = browser.stats.flaky;
  } else sum.failed += 1;
  return sum;
}

installIfNeeded();
const chromium = findChromium();
rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS, { recursive: true });
const started = Date.now();
run('npx', ['--no-install', 'next', 'typegen'], { NEXT_TELEMETRY_DISABLED: '1' });
const checks = [
  step('types', 'npx', ['--no-install', 'tsc', '--noEmit', '-p', '.']),
  step('lint', 'npx', ['--no-install', 'biome', 'ci', '--error-on-warnings', '.']),
  step('unit, reference, API', 'npx', [
    '--no-install',
    'vitest',
    'run',
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${join(RESULTS, 'unit.json')}`,
  ]),
];
buildIfNeeded();
checks.push(
  step('browser', 'npx', ['--no-install', 'playwright', 'test'], {
    CHROMIUM_PATH: chromium,
    PLAYWRIGHT_JSON_OUTPUT_NAME: join(RESULTS, 'browser.json'),
    TZ: 'America/New_York',
  }),
);
const sum = count();
console.log(`\nall checks took ${((Date.now() - started) / 1000).toFixed(0)} s`);
const skipped = sum.skipped > 0 ? `, ${sum.skipped} skipped` : '';
const twice = sum.twice > 0 ? ` (${sum.twice} on a second try)` : '';
console.log(`${sum.passed} passed${twice}, ${sum.failed} failed${skipped}`);
process.exit(checks.every(Boolean) && sum.failed === 0 ? 0 : 1);
