// `npm run clocks`: the unit and browser tests again under other clocks than the evening they are usually told at. After
// `npm test`, which installs, builds and finds the browser.

import { getChromium } from './get-chromium.mjs';
import { buildIfNeeded, installIfNeeded } from './prepare.mjs';
import { withShiftedClock } from './shifted-clock.mjs';
import { step } from './step.mjs';

/** In the zone of the demo night, America/Chicago. */
const CLOCKS = {
  'late in the evening': '2027-01-16T23:40-06:00',
  'twenty minutes before the clocks go forward': '2027-03-14T01:40-06:00',
  'in the hour that comes twice, the second time': '2026-11-01T01:30-06:00',
};

/** Rooms of numbers alone. No clock reaches them (tests/architecture.test.ts holds that): once is enough. */
const WITHOUT_A_CLOCK = ['air', 'carb', 'plan', 'power'];

await installIfNeeded();
const chromium = await getChromium();
await buildIfNeeded();
const apart = WITHOUT_A_CLOCK.map((room) => `--exclude=tests/${room}/**`);
const checks = [];
for (const [when, now] of Object.entries(CLOCKS)) {
  checks.push(
    await step(`unit tests ${when}`, 'npx', ['--no-install', 'vitest', 'run', ...apart], {
      CLOCK_SHIFT_MS: String(Date.parse(now) - Date.now()),
      NODE_OPTIONS: withShiftedClock(process.env.NODE_OPTIONS),
    }),
    await step(`browser tests ${when}`, 'npx', ['--no-install', 'playwright', 'test', '--reporter=list'], {
      CHROMIUM_PATH: chromium,
      TEST_NOW: now,
    }),
  );
}
process.exit(checks.every(Boolean) ? 0 : 1);
