import { describe, expect, test } from 'vitest';
import { DELETE, GET, PUT } from '@/app/api/air/route';
import { airsAnswerSchema } from '@/lib/contract/air-request';
import { answerOf, askAir, askAirRaw, problemOf } from './ask';

const airs = async (...states: readonly object[]) => answerOf(await askAir({ states }), airsAnswerSchema);

describe('POST /api/air', () => {
  // Two outside numbers: 1.19569 kg/m³ in Gupta, "Mass Metrology" (Springer), appendix, p. 205, printed to five digits
  // of an older constant set (1e-4); 1.1993139 kg/m³ by the R package masscor's CIPM-2007, all digits (2e-6).
  test.each([
    [{ temperatureC: 10, pressureHpa: 730 * 1.333224, relativeHumidity: 0.4 }, 1.19569, 1e-4],
    [{ temperatureC: 20, pressureHpa: 1013.25, relativeHumidity: 0.5 }, 1.1993139, 2e-6],
  ])('answers density by CIPM-2007 (%#)', async (state, published, tolerance) => {
    const { states } = await airs(state);
    expect(Math.abs((states[0]?.densityKgM3 ?? 0) / published - 1)).toBeLessThan(tolerance);
  });

  // ISO 2533:1975, 1500 m: 278.40 K, 845.560 hPa, relative density 0.86373 (dry air, ideal gas); the real gas is 0.04 %
  // denser.
  test('answers relative density and density altitude of the standard atmosphere', async () => {
    const { states } = await airs({ temperatureC: 5.25, elevationM: 1500, relativeHumidity: 0 });
    expect(Math.abs((states[0]?.relativeDensity ?? 0) / 0.86373 - 1)).toBeLessThan(6e-4);
    expect(Math.abs((states[0]?.densityAltitudeM ?? 0) - 1500)).toBeLessThan(8);
  });

  test('answers in the order it was asked', async () => {
    const temperatures = [12, -30, 5, -7];
    const { states } = await airs(
      ...temperatures.map((temperatureC) => ({ temperatureC, pressureHpa: 990, relativeHumidity: 0.8 })),
    );
    expect(states.map(({ temperatureC }) => Math.round(temperatureC * 1000) / 1000)).toEqual(temperatures);
  });

  test('says how many states had their humidity or pressure assumed', async () => {
    const { warnings } = await airs(
      { temperatureC: 1, pressureHpa: 990, relativeHumidity: 0.8 },
      { temperatureC: 2, pressureHpa: 990 },
      { temperatureC: 3, elevationM: 250 },
    );
    expect(warnings.map(({ code, states }) => [code, states])).toEqual([
      ['humidity-assumed', 2],
      ['pressure-is-estimate', 1],
    ]);
  });

  test('takes 100,000 states and refuses one more', async () => {
    const many = (count: number) =>
      `{"states":[${Array(count).fill('{"temperatureC":-20,"pressureHpa":990,"dewPointC":-25}').join()}]}`;
    const { states } = await answerOf(await askAirRaw(many(100_000)), airsAnswerSchema);
    expect(states).toHaveLength(100_000);
    const problem = await problemOf(await askAirRaw(many(100_001)));
    expect([problem.status, problem.errors?.[0]?.path, problem.errors?.[0]?.detail]).toEqual([
      400,
      'states',
      'at most 100000 states in one call',
    ]);
  });

  test('explains 1,015 hPa typed at 1,600 m', async () => {
    const problem = await problemOf(
      await askAir({ states: [{ temperatureC: -5, pressureHpa: 1015, elevationM: 1600 }] }),
    );
    expect(problem).toMatchObject({
      status: 422,
      errors: [
        {
          path: 'states[0].pressureHpa',
          pointer: '#/states/0/pressureHpa',
          code: 'sea-level-number-as-station',
        },
      ],
    });
    expect(problem.detail).toContain('looks like a sea-level number');
  });

  test('names every bad state, but not more than anyone reads', async () => {
    const states = Array.from({ length: 80 }, () => ({ temperatureC: 99, pressureHpa: 990 }));
    const problem = await problemOf(await askAir({ states }));
    expect(problem.errors).toHaveLength(50);
    expect(problem.detail).toContain('(and 79 more)');
  });

  test.each([
    ['GET', GET],
    ['PUT', PUT],
    ['DELETE', DELETE],
  ] as const)('refuses %s and says what it takes', async (_, method) => {
    const response = method();
    expect(response.headers.get('allow')).toBe('POST');
    expect((await problemOf(response)).status).toBe(405);
  });
});
