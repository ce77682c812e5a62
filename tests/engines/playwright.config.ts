import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { fakeWeatherEnvironment } from '../../.scripts/fake-weather-environment.mjs';
import type { EngineName } from './engine';

// `npm run engines` finds free ports and says which engines are there.
const PORT = Number(process.env.ENGINES_PORT ?? 3220);
const FAKE_WEATHER_PORT = Number(process.env.ENGINES_WEATHER_PORT ?? 3221);
const ENGINES = (process.env.ENGINES ?? 'webkit firefox').split(' ').filter(Boolean) as EngineName[];

const FAKE = `http://127.0.0.1:${FAKE_WEATHER_PORT}`;
const root = fileURLToPath(new URL('../..', import.meta.url));

export default defineConfig<{ engineName: EngineName }>({
  testDir: '.',
  outputDir: '../../.cache/engines',
  workers: 1,
  timeout: 180_000,
  expect: { timeout: 15_000 },
  reporter: [['list']],
  use: { baseURL: `http://127.0.0.1:${PORT}` },
  projects: ENGINES.map((engineName) => ({ name: engineName, use: { engineName } })),
  webServer: [
    {
      command: 'node .next/serve/serve.mjs',
      cwd: root,
      url: `http://127.0.0.1:${PORT}/api/health`,
      env: {
        ...fakeWeatherEnvironment(FAKE),
        PORT: String(PORT),
      },
      reuseExistingServer: false,
    },
    {
      command: `npx --no-install tsx tests/support/fake-weather/serve.ts --port ${FAKE_WEATHER_PORT} --delay 20`,
      cwd: root,
      url: `${FAKE}/faults`,
      reuseExistingServer: false,
    },
  ],
});
