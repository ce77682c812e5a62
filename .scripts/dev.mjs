// `npm run dev`: the app as it is written, beside a stand-in for the weather services, so that no network is needed.
// PORT=8080 serves elsewhere, the weather on the port after it; REAL_WEATHER=1 asks the services themselves.
import { fakeWeatherEnvironment } from './fake-weather-environment.mjs';
import { installIfNeeded } from './prepare.mjs';
import { runGroup } from './process-group.mjs';
import { ROOT } from './sources.mjs';

await installIfNeeded();
const port = Number(process.env.PORT ?? 3000);
const fake = `http://127.0.0.1:${port + 1}`;
const env = { ...process.env, NEXT_TELEMETRY_DISABLED: '1' };
const npx = (args, more = {}) =>
  runGroup('npx', ['--no-install', ...args], { cwd: ROOT, env: { ...env, ...more } });
const app = (more) => npx(['next', 'dev', '-p', String(port)], more);

if (process.env.REAL_WEATHER === '1') process.exit(await app({}));

const weather = npx(['tsx', 'tests/support/fake-weather/serve.ts', '--port', String(port + 1)]);
const served = app(fakeWeatherEnvironment(fake));
// The end of either is the end of both.
process.exit(await Promise.race([weather, served]));
