import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { GET as getForecast } from '@/app/api/forecast/route';
import { GET as getHistory } from '@/app/api/history/route';
import { GET as getPlaces } from '@/app/api/places/route';
import { fail, ok } from '@/lib/result/result';
import { type FakeWeather, startFakeWeather } from '@/tests/support/fake-weather/server';

/** The route's server and the service tell the same time: a forecast that was made at another is refused. */
const NOW = Date.UTC(2027, 0, 16, 22, 10);

let fake: FakeWeather;
beforeEach(async () => {
  vi.useFakeTimers({ now: NOW, toFake: ['Date'] });
  fake = await startFakeWeather({ seed: 7, now: () => NOW });
  for (const [name, value] of Object.entries(fake.environment())) vi.stubEnv(name, value);
});
afterEach(async () => {
  vi.unstubAllEnvs();
  vi.useRealTimers();
  await fake.close();
});

const ROUTES = [
  ['forecast', getForecast, 'lat=44.1&lon=-91.3&elevation=210'],
  ['places', getPlaces, 'q=furuvik'],
  ['places', getPlaces, 'lat=44.1&lon=-91.3'],
  ['history', getHistory, 'lat=44.1&lon=-91.3&elevation=210&months=1&years=1'],
] as const;

describe.each(ROUTES)('GET /api/%s', (path, get, query) => {
  const ask = (headers: Record<string, string> = {}) =>
    get(new Request(`http://localhost/api/${path}?${query}`, { headers }));

  test('may be shared, has a tag, and is not sent again to who has it', async () => {
    const first = await ask();
    expect(first.status).toBe(200);
    expect(first.headers.get('cache-control')).toMatch(/^public, max-age=\d+, stale-while-revalidate=\d+$/);
    const tag = first.headers.get('etag') ?? '';
    expect(tag).toMatch(/^W\/"[\w-]{22}"$/);
    for (const known of [tag, tag.slice(2), `"other", ${tag}`, '*']) {
      const again = await ask({ 'if-none-match': known });
      expect([again.status, await again.text(), again.headers.get('etag')]).toEqual([304, '', tag]);
      expect(again.headers.get('cache-control')).toContain('public');
    }
    const other = await ask({ 'if-none-match': '"other"' });
    expect([other.status, await other.text()]).toEqual([200, await first.text()]);
  });
});

describe('what went wrong', () => {
  test('is never shared', async () => {
    const problem = async () => fail({ status: 503, detail: 'No.' });
    const response = await handle(new Request('http://localhost/'), problem, { fresh: 60, stale: 60 });
    expect(response.headers.get('cache-control')).toBe('no-store');
    expect(response.headers.get('etag')).toBeNull();
  });

  test('nor is an answer that nobody says may be', async () => {
    const response = await handle(new Request('http://localhost/'), async () => ok({ a: 1 }));
    expect(response.headers.get('cache-control')).toBe('no-store');
  });
});
