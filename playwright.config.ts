import { defineConfig, devices } from '@playwright/test';
import { fakeWeatherEnvironment } from './.scripts/fake-weather-environment.mjs';
import { chromiumHere } from './.scripts/find-chromium.mjs';
import { withShiftedClock } from './.scripts/shifted-clock.mjs';
import { instantOf, NOW } from './tests/browser/clock';

/** Two checkouts can be tested beside each other on ports of their own. */
const PORT = Number(process.env.TEST_PORT ?? 3210);
const FAKE_WEATHER_PORT = PORT + 1;
const FAKE = `http://127.0.0.1:${FAKE_WEATHER_PORT}`;

/** The servers' clocks start where those of the pages stand, and run on from there. */
const CLOCK = {
  NODE_OPTIONS: withShiftedClock(process.env.NODE_OPTIONS),
  CLOCK_SHIFT_MS: String(instantOf(NOW) - Date.now()),
};

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: '.cache/browser',
  fullyParallel: true,
  // Twice what two cores can serve at once, since a page often waits for a clock or for the server: four take no more of
  // the processor than three, five a tenth more.
  workers: 4,
  // A second try leaves a trace of what went wrong; it passes nothing.
  retries: 1,
  failOnFlakyTests: true,
  timeout: 60_000,
  // Two cores shared with a server: a first visit can take a while.
  expect: { timeout: 15_000 },
  reporter: [['list'], ['json']],
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    // Neither UTC nor the zone of the demo night: a zone that is taken for another shows up here.
    timezoneId: 'America/New_York',
    // Clock times of the 24-hour clock, unless a test says otherwise.
    locale: 'en-GB',
    // A trace of every test would take a quarter of the whole time.
    trace: 'on-first-retry',
    launchOptions: {
      executablePath: chromiumHere() ?? undefined,
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        // The engine's own helpers would take from the pages of other tests what they give to this one: a seventh of all.
        '--js-flags=--single-threaded',
      ],
    },
  },
  projects: [
    {
      name: 'phone',
      // One pixel a point: painting seven times as many took a seventh of the whole run, and showed no more.
      use: { ...devices['Pixel 5'], viewport: { width: 360, height: 740 }, deviceScaleFactor: 1 },
    },
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } }, grep: /@desk/ },
  ],
  webServer: [
    {
      // As `npm start` serves it.
      command: 'node .next/serve/serve.mjs',
      url: `http://127.0.0.1:${PORT}/api/health`,
      env: {
        ...fakeWeatherEnvironment(FAKE),
        PORT: String(PORT),
        // As behind a proxy that speaks https.
        HSTS_SECONDS: '63072000',
        TZ: 'America/New_York',
        ...CLOCK,
      },
      reuseExistingServer: false,
    },
    {
      command: `npx --no-install tsx tests/support/fake-weather/serve.ts --port ${FAKE_WEATHER_PORT} --delay 20`,
      env: CLOCK,
      url: `${FAKE}/faults`,
      reuseExistingServer: false,
    },
  ],
});
