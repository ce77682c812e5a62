import { defineConfig, devices } from '@playwright/test';

const PORT = 3210;
const FAKE_WEATHER_PORT = 3211;
const FAKE = `http://127.0.0.1:${FAKE_WEATHER_PORT}`;

export default defineConfig({
  testDir: 'tests/browser',
  outputDir: '.cache/browser',
  fullyParallel: true,
  // More than two cores can serve at once, since a page often waits for a clock or for the server.
  workers: 3,
  // Several specs wait for real clocks; on a machine that is busy with something else one of them may need a second try.
  retries: 1,
  timeout: 60_000,
  // Two cores shared with a server: a first visit can take a while.
  expect: { timeout: 15_000 },
  reporter: [['list'], ['json']],
  use: {
    baseURL: `http://127.0.0.1:${PORT}`,
    // Clock times of the 24-hour clock, unless a test says otherwise.
    locale: 'en-GB',
    // A trace of every test would take a quarter of the whole time.
    trace: 'on-first-retry',
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH ?? '/usr/bin/chromium-headless-shell',
      args: [
        '--no-sandbox',
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
      ],
    },
  },
  projects: [
    { name: 'phone', use: { ...devices['Pixel 5'], viewport: { width: 360, height: 740 } } },
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } }, grep: /@desk/ },
  ],
  webServer: [
    {
      command: `npx --no-install next start -p ${PORT}`,
      url: `http://127.0.0.1:${PORT}/api/health`,
      env: {
        OPEN_METEO_BASE_URL: `${FAKE}/open-meteo`,
        OPEN_METEO_GEOCODING_BASE_URL: `${FAKE}/open-meteo-geocoding`,
        OPEN_METEO_ENSEMBLE_BASE_URL: `${FAKE}/open-meteo-ensemble`,
        OPEN_METEO_ARCHIVE_BASE_URL: `${FAKE}/open-meteo-archive`,
        METNO_BASE_URL: `${FAKE}/met-norway`,
        WEATHER_CONTACT: 'tests@example.org',
        NWS_BASE_URL: `${FAKE}/weather-gov`,
        NEXT_TELEMETRY_DISABLED: '1',
      },
      reuseExistingServer: false,
    },
    {
      command: `npx --no-install tsx tests/support/fake-weather/serve.ts --port ${FAKE_WEATHER_PORT} --delay 20`,
      url: `${FAKE}/faults`,
      reuseExistingServer: false,
    },
  ],
});
