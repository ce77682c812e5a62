// What is compared is the work of a request, so the limit on requests is off.
process.env.REQUESTS_PER_MINUTE = '0';

import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { handle } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { forecastAnswers } from '@/app/api/forecast/forecast-answers';
import { instant } from '@/lib/time/instant';
import { startFakeWeather } from '@/tests/support/fake-weather/server';
import { medianRates, requestRate, serveHandlers } from '@/tests/support/request-rate';
import { ROOT } from '@/tests/support/source-tree';
import { weatherDeps } from '@/tests/support/weather-deps';

/** A cached forecast against an empty handler, in the same run: bare in process, over HTTP, and in the built app. */
const WANTED = 0.6;
const QUERY = '?lat=46.79&lon=-92.1&elevation=280';

const fake = await startFakeWeather({ seed: 7, now: () => Date.now() });
const answers = forecastAnswers(
  weatherDeps({ environment: fake.environment, now: () => instant(Date.now()) }),
);
const forecast = (request: Request): Promise<Response> =>
  handle(request, () => answers(searchOf(request.url)));
const empty = (request: Request): Promise<Response> => handle(request, async () => ({ ok: true, value: {} }));

function report(where: string, { ours, peer, ratio }: Awaited<ReturnType<typeof medianRates>>): void {
  const verdict = ratio >= WANTED ? 'met' : 'MISSED';
  console.log(
    `${where.padEnd(22)} cached forecast ${ours.toFixed(0)}/s, empty handler ${peer.toFixed(0)}/s, ` +
      `ratio ${(ratio * 100).toFixed(0)} % (wanted ${WANTED * 100} %: ${verdict})`,
  );
}

/** Calls a handler directly and reads what it answers. */
async function handlerRate(handler: (request: Request) => Promise<Response>, count: number): Promise<number> {
  const start = performance.now();
  for (let i = 0; i < count; i += 1) {
    const response = await handler(new Request(`http://local/${QUERY}`));
    await response.arrayBuffer();
  }
  return (count * 1000) / (performance.now() - start);
}

const first = await forecast(new Request(`http://local/${QUERY}`));
console.log(`one answer is ${(await first.arrayBuffer()).byteLength} bytes, 49 hours`);

report(
  'handlers in process',
  await medianRates(
    9,
    () => handlerRate(forecast, 3000),
    () => handlerRate(empty, 3000),
  ),
);

const bare = await serveHandlers({ '/forecast': forecast, '/empty': empty });
report(
  'over loopback HTTP',
  await medianRates(
    9,
    () => requestRate(`${bare.url}/forecast${QUERY}`, 1600),
    () => requestRate(`${bare.url}/empty`, 1600),
  ),
);
bare.close();

if (existsSync(join(ROOT, '.next', 'BUILD_ID'))) await benchBuiltApp();
await fake.close();

async function benchBuiltApp(): Promise<void> {
  const port = await freePort();
  const app = spawn(
    process.execPath,
    [join(ROOT, 'node_modules', 'next', 'dist', 'bin', 'next'), 'start', '-p', String(port)],
    {
      cwd: ROOT,
      env: { ...process.env, ...fake.environment(), NODE_ENV: 'production', REQUESTS_PER_MINUTE: '0' },
      stdio: 'ignore',
    },
  );
  try {
    const url = `http://127.0.0.1:${port}`;
    await untilAnswers(`${url}/api/health`, app);
    await requestRate(`${url}/api/forecast${QUERY}`, 160);
    report(
      'built app, next start',
      await medianRates(
        7,
        () => requestRate(`${url}/api/forecast${QUERY}`, 800),
        () => requestRate(`${url}/api/health`, 800),
      ),
    );
  } finally {
    app.kill();
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}

async function untilAnswers(url: string, app: ChildProcess): Promise<void> {
  for (let i = 0; i < 100; i += 1) {
    if (app.exitCode !== null) throw new Error(`the app ended with ${app.exitCode}`);
    const answered = await fetch(url).then(
      (response) => response.ok,
      () => false,
    );
    if (answered) return;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  throw new Error('the app did not start');
}
