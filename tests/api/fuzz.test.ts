import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { airsAnswerSchema } from '@/lib/contract/air-request';
import { planAnswerSchema, plansAnswerSchema } from '@/lib/contract/plan-answer';
import { answerOf, askAirRaw, askPlanRaw, problemOf } from './ask';
import { NIGHT } from './night';
import { withoutWeather } from './no-weather';

const ANSWERS = [planAnswerSchema, plansAnswerSchema] as const;

/** An answer by its schema or a refusal in words: never a fault of our own. */
async function soundPlan(response: Response): Promise<number> {
  if (response.status === 200) {
    const body: unknown = await response.json();
    expect(ANSWERS.some((schema) => schema.safeParse(body).success)).toBe(true);
  } else {
    const problem = await problemOf(response);
    expect([400, 413, 415, 422, 503]).toContain(problem.status);
    expect(problem.detail.length).toBeGreaterThan(10);
  }
  return response.status;
}

async function soundAir(response: Response): Promise<void> {
  if (response.status === 200) await answerOf(response, airsAnswerSchema);
  else expect((await problemOf(response)).status).toBeLessThan(500);
}

/** Values that break programs which trust what they are sent. */
const nasty = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    '',
    0,
    -0,
    -1,
    1e300,
    1e-300,
    5e-324,
    2 ** 53,
    true,
    [],
    {},
    '1e309',
    'NaN',
    '2027-01-16T21:00:00Z',
    '0000-01-01T00:00:00Z',
    '9999-12-31T23:59:59-23:59',
    'Etc/GMT+12',
    '__proto__',
  ),
  fc.double({ noNaN: true }),
  fc.integer({ min: -1000, max: 1000 }),
  fc.string({ maxLength: 12 }),
  fc.jsonValue({ maxDepth: 3 }),
);

type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/** Every place in a JSON value, as a path. */
function placesIn(
  value: Json,
  path: readonly (string | number)[] = [],
): readonly (readonly (string | number)[])[] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries = Array.isArray(value) ? value.map((entry, i) => [i, entry] as const) : Object.entries(value);
  return [path, ...entries.flatMap(([name, entry]) => placesIn(entry as Json, [...path, name]))];
}

/** A copy with another value at one place; `undefined` leaves the place out. */
function withAt(value: Json, path: readonly (string | number)[], other: unknown): unknown {
  const [name, ...rest] = path;
  if (name === undefined) return other;
  if (Array.isArray(value)) return value.map((entry, i) => (i === name ? withAt(entry, rest, other) : entry));
  const fields = value as { readonly [name: string]: Json };
  return { ...fields, [name]: withAt(fields[name] ?? null, rest, other) };
}

const SENT = JSON.parse(
  JSON.stringify({
    ...NIGHT,
    machine: {
      ...NIGHT.machine,
      trim: { lowest: 1, highest: 3, baseline: 2, percentPerPosition: 1.5 },
      pilot: { jet: 45, jets: [42.5, 45, 47.5], screw: 'fuel', turns: 1.5 },
      needle: { groove: 3, grooves: 5 },
      limits: { leanPercent: 2, richPercent: 5, risk: 0.05 },
      intakeOffsetC: 4,
      fuelDensity: { offsetC: 0, baselineC: -8 },
    },
    event: {
      ...NIGHT.event,
      place: { name: 'Lake Orvana', latitude: 46.1, longitude: -89.2 },
      swapMinutes: 15,
      ride: false,
    },
    hours: NIGHT.hours.slice(0, 7),
    readings: [{ id: 'a', time: '2027-01-16T18:30:00-06:00', temperatureC: -10, relativeHumidity: 0.7 }],
    fitted: { mains: [410, 410], trim: 2 },
    made: [{ run: 0, setting: { mains: [410, 410], trim: 2 } }],
    options: { seed: 3, scenarios: 16, worthItPercent: 0.5 },
  }),
) as Json;
const PLACES = placesIn(SENT);

describe('Whatever is sent', () => {
  withoutWeather();

  test('the unspoilt body of these tests is answered', async () => {
    expect(await soundPlan(await askPlanRaw(JSON.stringify(SENT)))).toBe(200);
  });

  test('a body that is right but for one or two places is answered or refused in words', async () => {
    const spoilt = fc.array(fc.tuple(fc.constantFrom(...PLACES), fc.option(nasty, { nil: undefined })), {
      minLength: 1,
      maxLength: 2,
    });
    await fc.assert(
      fc.asyncProperty(spoilt, async (changes) => {
        const body = changes.reduce<unknown>((json, [path, other]) => {
          const there = placesIn(json as Json).some((place) => place.join() === path.join());
          return there ? withAt(json as Json, path, other) : json;
        }, SENT);
        await soundPlan(await askPlanRaw(JSON.stringify(body) ?? 'null'));
      }),
      { numRuns: 300 },
    );
  });

  test('any JSON is answered or refused in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.json({ maxDepth: 4 }), async (body) => {
        await soundPlan(await askPlanRaw(body));
        await soundAir(await askAirRaw(body));
      }),
      { numRuns: 300 },
    );
  });

  test('any bytes are answered or refused in words', async () => {
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 200 }), async (body) => {
        await soundPlan(await askPlanRaw(new Uint8Array(body)));
        await soundAir(await askAirRaw(new Uint8Array(body)));
      }),
      { numRuns: 200 },
    );
  });

  test('air of any numbers is answered or refused in words', async () => {
    const field = fc.option(fc.oneof(fc.double({ min: -200, max: 2000, noNaN: true }), nasty), {
      nil: undefined,
    });
    const state = fc.record({
      temperatureC: field,
      pressureHpa: field,
      altimeterHpa: field,
      seaLevelHpa: field,
      elevationM: field,
      relativeHumidity: field,
      dewPointC: field,
      frostPointC: field,
    });
    await fc.assert(
      fc.asyncProperty(fc.array(state, { maxLength: 3 }), async (states) => {
        await soundAir(await askAirRaw(JSON.stringify({ states })));
      }),
      { numRuns: 500 },
    );
  });

  test('air within its ranges is always answered, at every corner of them', async () => {
    const state = fc.record({
      temperatureC: fc.double({ min: -70, max: 60, noNaN: true }),
      pressureHpa: fc.double({ min: 450, max: 1100, noNaN: true }),
      relativeHumidity: fc.double({ min: 0, max: 1, noNaN: true }),
    });
    const corners = [-70, 60].flatMap((temperatureC) =>
      [450, 1100].flatMap((pressureHpa) =>
        [0, 1].map((relativeHumidity) => ({ temperatureC, pressureHpa, relativeHumidity })),
      ),
    );
    await answerOf(await askAirRaw(JSON.stringify({ states: corners })), airsAnswerSchema);
    await fc.assert(
      fc.asyncProperty(fc.array(state, { minLength: 1, maxLength: 5 }), async (states) => {
        const answer = await answerOf(await askAirRaw(JSON.stringify({ states })), airsAnswerSchema);
        for (const air of answer.states) expect(air.dryDensityKgM3).toBeLessThanOrEqual(air.densityKgM3);
      }),
      { numRuns: 200 },
    );
  });
});
