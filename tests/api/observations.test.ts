import { describe, expect, test } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { observationAnswer } from '@/app/api/observations/observation-answers';
import { observationsJsonSchema } from '@/lib/weather/observations-json';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { BRISK_TIMINGS, EVENING, weatherDeps } from '@/tests/support/weather-deps';
import { answerOf, problemOf } from './ask';

const fake = fakeWeatherForTests(() => EVENING);
const deps = () => weatherDeps({ environment: fake.environment, timings: BRISK_TIMINGS });
const observations = (query: string) =>
  handle(new Request('http://localhost/api'), () => observationAnswer(`?${query}`, deps()));

describe('GET /api/observations', () => {
  test('tells what stations observed, how far away, with the credit', async () => {
    const json = await answerOf(await observations('lat=46.79&lon=-92.1'), observationsJsonSchema);
    expect(json.observations.map(({ name }) => name)).toEqual(['Fake Lake', 'Fake Field']);
    expect(json.attribution).toContain('US National Weather Service');
  });

  test('names the stations that were left out, and why', async () => {
    fake.setFault('weather-gov', 'observation-yesterday');
    const json = await answerOf(await observations('lat=46.79&lon=-92.1'), observationsJsonSchema);
    expect(json.observations).toEqual([]);
    expect(json.leftOut[0]).toMatchObject({ code: 'too-old' });
  });

  test.each([
    ['lat=46.79', 400, 'lon: is missing'],
    ['lat=146.79&lon=0', 400, 'expected -90 to 90'],
    ['lat=46.79&lon=-92.1&x=1', 400, 'x'],
    ['lat=59.9&lon=10.7', 422, 'Paste the report of an airfield'],
  ])('refuses %s', async (query, status, words) => {
    const problem = await problemOf(await observations(query));
    expect(problem.status).toBe(status);
    expect(problem.detail).toContain(words);
  });

  test('says in words that the service did not answer, and when to come back', async () => {
    fake.setFault('weather-gov', 'reset');
    const response = await observations('lat=46.79&lon=-92.1');
    expect(response.headers.get('retry-after')).toBe('30');
    expect((await problemOf(response)).status).toBe(503);
  });
});
