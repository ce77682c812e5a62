import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { handle } from '@/app/api/_http/handle';
import { GET, POST } from '@/app/api/plan.csv/route';
import { tableAnswer } from '@/app/api/plan.csv/table-answer';
import type { SharedNight } from '@/lib/share/shared-night';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { getForecast } from '@/lib/weather/get-forecast';
import { CHANGING_WEATHER_ENVIRONMENT, changingWeather } from '@/tests/support/changing-weather';
import {
  acceptedEvening,
  FALL_PER_HOUR,
  payloadOf,
  ROUNDS,
  roundStart,
  SHARED_AT,
  START_C,
} from '@/tests/support/shared-evening';
import { BRISK_TIMINGS, weatherDeps } from '@/tests/support/weather-deps';
import { problemOf } from './ask';

/** Asks for the table of a night, with air so many kelvin warmer than the night was shared with; null: no service. */
function ask(
  night: SharedNight,
  given: { readonly warmer: number | null; readonly at: Instant; readonly units?: string },
) {
  const service = changingWeather({
    from: SHARED_AT,
    startC: START_C,
    fallPerHour: FALL_PER_HOUR,
    shiftByHour: [given.warmer],
  });
  service.setNow(given.at);
  const deps = weatherDeps({
    fetch: service.fetch,
    now: () => given.at,
    environment: () => CHANGING_WEATHER_ENVIRONMENT,
    timings: { ...BRISK_TIMINGS, attemptMs: 500, totalMs: 600, hedgeMs: 50, staleGraceMs: 100 },
  });
  const units = given.units === undefined ? '' : `&units=${given.units}`;
  const request = new Request(`http://localhost/api/plan.csv?d=${payloadOf(night)}${units}`);
  return handle(request, () =>
    tableAnswer(request, { fetchForecast: (question) => getForecast(question, deps), now: () => given.at }),
  );
}

async function rowsOf(response: Response) {
  const text = await response.text();
  if (response.status !== 200) throw new Error(`${response.status}: ${text}`);
  return Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;
}

const EARLY = addMinutes(SHARED_AT, 20);

describe('GET /api/plan.csv', () => {
  test('answers a row for every run, planned with the newest forecast', async () => {
    const response = await ask(acceptedEvening(), { warmer: -5, at: EARLY });
    expect(response.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    const colder = await rowsOf(response);
    const asShared = await rowsOf(await ask(acceptedEvening(), { warmer: null, at: EARLY }));
    expect([colder.length, asShared.length]).toEqual([ROUNDS, ROUNDS]);
    const drop = colder.map(
      (row, i) => Number(asShared[i]!['temperature (C)']) - Number(row['temperature (C)']),
    );
    for (const kelvin of drop) expect(kelvin).toBeCloseTo(5, 1);
    expect(Number(colder.at(-1)!['jet 1'])).toBeGreaterThan(Number(asShared.at(-1)!['jet 1']));
  });

  test('keeps what is past as it was accepted', async () => {
    const rows = await rowsOf(await ask(acceptedEvening(), { warmer: -5, at: roundStart(5) }));
    const accepted = acceptedEvening().machines[0]!.accepted!;
    expect(rows.slice(0, 6).map((row) => [Number(row['jet 1']), row.state])).toEqual(
      accepted.slice(0, 6).map(({ mains }) => [mains[0], 'made']),
    );
    expect(rows.at(-1)!.state).toBe('planned');
  });

  test('tells temperatures in the units that were asked for', async () => {
    const [row] = await rowsOf(await ask(acceptedEvening(), { warmer: 0, at: EARLY, units: 'us' }));
    expect(Object.keys(row!)).toContain('temperature (F)');
    const wrong = await ask(acceptedEvening(), { warmer: 0, at: EARLY, units: 'imperial' });
    expect((await problemOf(wrong)).errors?.[0]?.path).toBe('units');
  });

  test('says so where there are no hours to plan with', async () => {
    const response = await ask({ ...acceptedEvening(), hours: [] }, { warmer: null, at: EARLY });
    expect(await problemOf(response)).toMatchObject({ status: 503 });
  });

  test('refuses a payload that is none, and every other method', async () => {
    expect((await problemOf(await GET(new Request('http://localhost/api/plan.csv?d=1x')))).status).toBe(400);
    expect((await problemOf(POST())).status).toBe(405);
  });
});
