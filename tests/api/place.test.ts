import { describe, expect, test } from 'vitest';
import { type HoursOfRequest, hoursOfRequest } from '@/app/api/plan/hours-of-request';
import { planAnswers } from '@/app/api/plan/plan-answers';
import { planAnswerSchema } from '@/lib/contract/plan-answer';
import { planRequestSchema } from '@/lib/contract/plan-request';
import { expectOk } from '@/lib/result/result';
import { addMinutes } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { METRIC_UNITS } from '@/lib/units/choice';
import { getForecast } from '@/lib/weather/get-forecast';
import { fakeWeatherForTests } from '@/tests/support/fake-weather/for-tests';
import { BRISK_TIMINGS, EVENING, handClock, weatherDeps } from '@/tests/support/weather-deps';
import { askPlan, type PlanBody, problemOf } from './ask';
import { NIGHT } from './night';
import { withoutWeather } from './no-weather';

const LAKE = { name: 'Lake Orvana', latitude: 46.1, longitude: -89.2 };
const { hours: _, now: __, ...WITHOUT_HOURS } = NIGHT;
/** Three rounds from an hour after the evening of the fake's clock. */
const ROUNDS = [1, 2, 3].map((round) => ({
  name: `Round ${round}`,
  start: isoUtc(addMinutes(EVENING, round * 60)),
  end: isoUtc(addMinutes(EVENING, round * 60 + 10)),
}));
const AT_LAKE: PlanBody = { ...WITHOUT_HOURS, place: LAKE, event: { ...NIGHT.event, runs: ROUNDS } };
const voice = { zone: NIGHT.event.timezone, units: METRIC_UNITS, runNames: ROUNDS.map(({ name }) => name) };

const fake = fakeWeatherForTests(() => EVENING);

function asker(clock = handClock()) {
  const deps = weatherDeps({ environment: fake.environment, now: clock.now, timings: BRISK_TIMINGS });
  return {
    voice,
    fetchForecast: (question: Parameters<typeof getForecast>[0]) => getForecast(question, deps),
  };
}

function planOf(body: PlanBody, hours: HoursOfRequest) {
  const [answer] = expectOk(planAnswers(planRequestSchema.parse(body), { ...hours, clock: EVENING, voice }));
  return planAnswerSchema.parse(answer);
}

describe('A plan for a place', () => {
  test('is made with the forecast there, and gives the service its credit', async () => {
    const hours = expectOk(await hoursOfRequest(planRequestSchema.parse(AT_LAKE), asker()));
    const plan = planOf(AT_LAKE, hours);
    expect(plan.runs.every(({ state }) => state === 'planned')).toBe(true);
    expect(plan.hours.some(({ origin }) => origin === 'forecast')).toBe(true);
    expect(plan.source.attribution).not.toBe('');
    expect(plan.source.fetchedAt).not.toBeNull();
    expect(plan.warnings.map(({ code }) => code)).not.toContain('forecast-is-old');
  });

  test('falls back on the place of the event', async () => {
    const { place, ...body } = AT_LAKE;
    const event = { ...AT_LAKE.event, place: LAKE };
    const ask = asker();
    const seriesOf = async (sent: PlanBody) =>
      expectOk(await hoursOfRequest(planRequestSchema.parse(sent), ask)).series;
    expect((await seriesOf({ ...body, event })).hours).toEqual((await seriesOf({ ...body, place })).hours);
  });

  test('says so when no service answers and the last copy stands in', async () => {
    const clock = handClock();
    const ask = asker(clock);
    const body = planRequestSchema.parse(AT_LAKE);
    expectOk(await hoursOfRequest(body, ask));
    fake.setFault('all', 'status-500');
    clock.forward(2 * 3_600_000);
    const { warnings } = expectOk(await hoursOfRequest(body, ask));
    expect(warnings.map(({ code }) => code)).toEqual(['forecast-is-old']);
    expect(warnings[0]?.message).toContain('the answer of 2027-01-16 16:10');
  });

  test('without any service is refused with when to come back', async () => {
    fake.setFault('all', 'status-500');
    const hours = await hoursOfRequest(planRequestSchema.parse(AT_LAKE), asker());
    expect(hours).toMatchObject({ ok: false, reason: { status: 503 } });
    expect(!hours.ok && Number(hours.reason.headers?.['retry-after'])).toBeGreaterThan(0);
    expect(!hours.ok && hours.reason.detail).toContain('No weather service answered');
  });

  test('next year is refused: no forecast reaches that far', async () => {
    const runs = [{ name: 'Round 1', start: '2028-01-16T19:00:00-06:00', end: '2028-01-16T19:10:00-06:00' }];
    const body = planRequestSchema.parse({ ...AT_LAKE, event: { ...NIGHT.event, runs } });
    const hours = await hoursOfRequest(body, asker());
    expect(hours).toMatchObject({ ok: false, reason: { status: 422 } });
    expect(!hours.ok && hours.reason.detail).toContain('The forecast runs from');
  });

  test('with no runs asks no service', async () => {
    const body = planRequestSchema.parse({ ...AT_LAKE, event: { ...NIGHT.event, runs: [] } });
    expect(await hoursOfRequest(body, asker())).toMatchObject({ ok: false, reason: { status: 422 } });
    expect(fake.calls()).toEqual([]);
  });
});

describe('POST /api/plan for a place', () => {
  withoutWeather();

  test('answers 503 in words where no service can be reached', async () => {
    const response = await askPlan(AT_LAKE);
    expect(Number(response.headers.get('retry-after'))).toBeGreaterThan(0);
    expect(await problemOf(response)).toMatchObject({ status: 503, title: 'Service Unavailable' });
  });
});
