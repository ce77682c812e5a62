// What is compared is the work of a request, so the limit on requests is off.
process.env.REQUESTS_PER_MINUTE = '0';

import { handle } from '@/app/api/_http/handle';
import { searchOf } from '@/app/api/_http/query';
import { forecastAnswers } from '@/app/api/forecast/forecast-answers';
import { instant } from '@/lib/time/instant';
import { startFakeWeather } from '@/tests/support/fake-weather/server';
import { medianRates, requestRate, serveHandlers } from '@/tests/support/request-rate';
import { weatherDeps } from '@/tests/support/weather-deps';
import { startBuiltApp } from './built-app';
import { tell } from './outcome';

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
  tell({
    what: `cached forecast, ${where}`,
    ours: `${ours.toFixed(0)} requests/s`,
    peer: `empty handler ${peer.toFixed(0)} requests/s`,
    ratio: `${(ratio * 100).toFixed(0)} % of its rate`,
    wanted: { goal: `${WANTED * 100} % or more`, met: ratio >= WANTED },
  });
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

const app = await startBuiltApp({ env: fake.environment() });
try {
  await requestRate(`${app.url}/api/forecast${QUERY}`, 160);
  report(
    'built app',
    await medianRates(
      7,
      () => requestRate(`${app.url}/api/forecast${QUERY}`, 800),
      () => requestRate(`${app.url}/api/health`, 800),
    ),
  );
} finally {
  await app.stop();
  await fake.close();
}
