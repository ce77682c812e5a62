import { describe, expect, test } from 'vitest';
import { PLAN_EXAMPLE } from '@/app/api/_openapi/examples';
import { GET } from '@/app/api/plan/route';
import { planAnswerSchema, plansAnswerSchema } from '@/lib/contract/plan-answer';
import { answerOf, askPlan, type PlanBody, problemOf } from './ask';
import { NIGHT, night, withEvent, withMachine } from './night';

const planOf = async (body: PlanBody) => answerOf(await askPlan(body), planAnswerSchema);

describe('POST /api/plan', () => {
  test('answers a cooling night with richer jets as it goes, and says so', async () => {
    const plan = await planOf(night({ options: { worthItPercent: 0 } }));
    const mains = plan.runs.map(({ setting }) => setting.mains[0] ?? 0);
    expect(mains).toEqual([...mains].sort((a, b) => a - b));
    expect(mains[3]).toBeGreaterThan(mains[0] ?? 0);
    expect(plan.swaps.length).toBeGreaterThan(0);
    for (const { to, words } of plan.swaps) {
      expect(plan.call).toContain(`Put in ${to.mains[0]}`);
      expect(words).toContain(`Put in ${to.mains[0]}`);
    }
  });

  test('says what a swap had to save: half a percent a carburettor, the machine’s own, or what was asked for', async () => {
    expect((await planOf(night())).swapWorthPercent).toBeCloseTo(1, 9);
    const own = withMachine({ swapWorthPercent: 2.5 });
    expect((await planOf(own)).swapWorthPercent).toBeCloseTo(2.5, 9);
    expect((await planOf({ ...own, options: { worthItPercent: 0.25 } })).swapWorthPercent).toBeCloseTo(
      0.25,
      9,
    );
    expect((await askPlan(withMachine({ swapWorthPercent: 21 }))).status).toBe(400);
  });

  test('gives every hour its air, its ideal for each carburettor and its chance of lean', async () => {
    const plan = await planOf(night());
    expect(plan.hours.length).toBeGreaterThanOrEqual(9);
    for (const hour of plan.hours) {
      expect(hour.ideal).toHaveLength(2);
      expect(hour.air.densityKgM3).toBeGreaterThan(1.2);
    }
    const drifts = plan.hours.map(({ baselineDriftPercent }) => baselineDriftPercent);
    expect(drifts).toEqual([...drifts].sort((a, b) => b - a));
  });

  test('says of every hour whose it is, and which pressures are an estimate', async () => {
    const sent = await planOf(night());
    expect(sent.hours[0]?.source).toEqual({
      temperatureBy: null,
      pressureBy: null,
      pressureIsEstimate: false,
      madeAt: null,
      words: 'typed',
    });
    const without = NIGHT.hours.map(({ time, temperatureC }) => ({ time, temperatureC }));
    const plan = await planOf(night({ hours: without }));
    for (const { source } of plan.hours)
      expect(source).toMatchObject({
        pressureIsEstimate: true,
        words: 'typed; pressure an estimate (standard atmosphere)',
      });
  });

  test('writes times with the offset of the event, whatever the device has', async () => {
    const plan = await planOf(night());
    expect(plan.runs[0]?.start).toBe('2027-01-16T19:00:00-06:00');
    expect(plan.hours[0]?.time).toBe('2027-01-16T18:00:00-06:00');
    const moved = await planOf(withEvent({ timezone: 'Asia/Kathmandu' }));
    expect(moved.runs[0]?.start).toBe('2027-01-17T06:45:00+05:45');
    expect(moved.runs.map(({ setting }) => setting)).toEqual(plan.runs.map(({ setting }) => setting));
  });

  test('asks for a reading while there is time to act on it, and not once it was taken', async () => {
    const readingAt = async (now: string, readings: PlanBody['readings'] = []) =>
      (await planOf(night({ now, readings }))).standing.reading;
    expect(await readingAt('2027-01-16T12:00:00-06:00')).toBeNull();
    const now = '2027-01-16T18:20:00-06:00';
    const asked = await readingAt(now);
    expect(asked).toMatchObject({ run: 0, at: '2027-01-16T18:35:00-06:00' });
    expect(asked!.temperatureSdAfterC).toBeLessThan(asked!.temperatureSdBeforeC - 0.5);
    expect(asked!.words).toMatch(/^Read the thermometer at 18:35: it would tell the temperature of /);
    const reading = { id: 'r', time: '2027-01-16T18:15:00-06:00', temperatureC: -9 };
    expect(await readingAt(now, [reading])).toBeNull();
  });

  test('gives the same plan for the same input', async () => {
    expect(await planOf(night())).toEqual(await planOf(night()));
  });

  test('plans several machines at once, in their order', async () => {
    const { machine, ...shared } = NIGHT;
    const machines = ['Twin', 'Spare', 'Third'].map((name) => ({ machine: { ...machine, name } }));
    const { plans } = await answerOf(await askPlan({ ...shared, machines }), plansAnswerSchema);
    expect(plans.map((plan) => plan.machine)).toEqual(['Twin', 'Spare', 'Third']);
    expect(plans[0]?.runs).toEqual((await planOf(night())).runs);
  });

  test('speaks in the units asked for', async () => {
    const ride = { ...NIGHT.event, ride: true };
    const call = async (units: NonNullable<PlanBody['options']>['units']) =>
      (await planOf(night({ event: ride, options: { units } }))).call;
    expect(await call({ temperature: 'F' })).toMatch(/−\d+\u00a0°F/);
    expect(await call(undefined)).toMatch(/−\d+\.\d\u00a0°C/);
  });

  test('says tonight for a night that begins on the day of now, and only then', async () => {
    const warm = NIGHT.hours.map((hour) => ({ ...hour, temperatureC: -4 }));
    const call = async (now: string) => (await planOf(night({ hours: warm, now }))).call;
    expect(await call('2027-01-16T12:00:00-06:00')).toBe('No swap tonight: 410 holds all 4 runs.');
    expect(await call('2027-01-15T23:00:00-06:00')).toBe('No swap: 410 holds all 4 runs.');
  });

  test('leaves a run alone that has been made', async () => {
    const plan = await planOf(
      night({ made: [{ run: 0, setting: { mains: [450, 450] } }], now: '2027-01-16T19:30:00-06:00' }),
    );
    expect(plan.runs[0]).toMatchObject({ state: 'made', setting: { mains: [450, 450] } });
  });

  test('carries an example in its description that it answers', async () => {
    expect((await planOf(PLAN_EXAMPLE)).call.length).toBeGreaterThan(10);
  });

  test('takes no GET', async () => {
    expect((await problemOf(GET())).status).toBe(405);
  });
});

describe('POST /api/plan, where an evening is not plain', () => {
  test('a night with 25 hours has the repeated hour twice', async () => {
    // The clocks go back at 02:00 CDT on 2027-11-07 (Energy Policy Act of 2005: first Sunday of November).
    const plan = await planOf(
      night({
        event: {
          ...NIGHT.event,
          runs: [
            {
              name: 'First half past one',
              start: '2027-11-07T01:30:00-05:00',
              end: '2027-11-07T01:40:00-05:00',
            },
            {
              name: 'Second half past one',
              start: '2027-11-07T01:30:00-06:00',
              end: '2027-11-07T01:40:00-06:00',
            },
          ],
        },
        hours: hoursFrom('2027-11-07T05:00:00Z', 5),
        now: '2027-11-06T22:00:00-05:00',
      }),
    );
    expect(plan.runs.map(({ start }) => start)).toEqual([
      '2027-11-07T01:30:00-05:00',
      '2027-11-07T01:30:00-06:00',
    ]);
    expect(plan.hours.map(({ time }) => time.slice(11))).toEqual(
      expect.arrayContaining(['01:00:00-05:00', '01:00:00-06:00', '02:00:00-06:00']),
    );
  });

  test('a night with 23 hours leaves the missing hour out', async () => {
    // The clocks go forward at 02:00 CST on 2027-03-14 (second Sunday of March).
    const plan = await planOf(
      night({
        event: {
          ...NIGHT.event,
          runs: [
            { name: 'Before', start: '2027-03-14T01:30:00-06:00', end: '2027-03-14T01:40:00-06:00' },
            { name: 'After', start: '2027-03-14T03:30:00-05:00', end: '2027-03-14T03:40:00-05:00' },
          ],
        },
        hours: hoursFrom('2027-03-14T06:00:00Z', 5),
        now: '2027-03-13T22:00:00-06:00',
      }),
    );
    expect(plan.runs.map(({ start }) => start)).toEqual([
      '2027-03-14T01:30:00-06:00',
      '2027-03-14T03:30:00-05:00',
    ]);
    expect(plan.hours.some(({ time }) => time.includes('T02:'))).toBe(false);
  });

  test('a run across midnight is one run', async () => {
    const runs = [{ name: 'Final', start: '2027-01-16T23:55:00-06:00', end: '2027-01-17T00:05:00-06:00' }];
    const plan = await planOf(withEvent({ runs }));
    expect(plan.runs[0]?.end).toBe('2027-01-17T00:05:00-06:00');
  });

  test('runs out of order are sorted, named and traceable to what was sent', async () => {
    const [a, b, c, d] = NIGHT.event.runs;
    if (!(a && b && c && d)) throw new Error('the night has four runs');
    const plan = await planOf(withEvent({ runs: [c, a, d, b] }));
    expect(plan.runs.map(({ name, sentRun }) => [name, sentRun])).toEqual([
      ['Round 1', 1],
      ['Round 2', 3],
      ['Round 3', 0],
      ['Round 4', 2],
    ]);
    expect(messageOf(plan, 'runs-reordered')).toContain('sorted');
  });

  test('overlapping runs are named', async () => {
    const runs = [
      ...NIGHT.event.runs,
      { name: 'Warm-up', start: '2027-01-16T19:05:00-06:00', end: '2027-01-16T19:20:00-06:00' },
    ];
    expect(messageOf(await planOf(withEvent({ runs })), 'runs-overlap')).toMatch(
      /Round 1.*Warm-up|Warm-up.*Round 1/,
    );
  });

  test('a run past the last hour gets no call, and the call says where the hours end', async () => {
    const runs = [
      ...NIGHT.event.runs,
      { name: 'Late', start: '2027-01-17T04:00:00-06:00', end: '2027-01-17T04:10:00-06:00' },
    ];
    const plan = await planOf(withEvent({ runs }));
    expect(plan.runs[4]?.state).toBe('beyond-hours');
    expect(plan.call).toContain('The hours end at 02:00: no call for Late.');
    expect(messageOf(plan, 'run-beyond-hours')).toContain('Late');
  });

  test('with no jet rich enough the call opens with what to borrow', async () => {
    const plan = await planOf(withMachine({ box: [{ size: 410, count: 2 }] }));
    expect(plan.call).toMatch(/^Do not race Rounds \d.*: borrow \d{3}\./);
    expect(messageOf(plan, 'no-jet-rich-enough')).toContain('borrow');
  });

  test('with no pressure the estimate is named', async () => {
    const hours = NIGHT.hours.map(({ pressureHpa: _, ...hour }) => hour);
    expect(messageOf(await planOf(night({ hours })), 'pressure-is-estimate')).toContain(
      'standard atmosphere',
    );
  });

  test('with no humidity the assumption is named', async () => {
    const hours = NIGHT.hours.map(({ relativeHumidity: _, ...hour }) => hour);
    expect(messageOf(await planOf(night({ hours })), 'humidity-assumed')).toContain('80\u00a0%');
    expect((await planOf(night())).warnings.map(({ code }) => code)).not.toContain('humidity-assumed');
  });
});

describe('POST /api/plan, refusing', () => {
  const refused = async (body: unknown) => {
    const { status, errors } = await problemOf(await askPlan(body));
    return { status, errors: errors?.map(({ path, detail }) => [path, detail]) };
  };

  test('an empty box', async () => {
    expect(await refused(withMachine({ box: [] }))).toEqual({
      status: 422,
      errors: [['machine.box', 'The box is empty. Add the main jets you own, those in the engine too.']],
    });
  });

  test('one jet for two carburettors', async () => {
    const { status, errors } = await refused(withMachine({ box: [{ size: 420, count: 1 }] }));
    expect([status, errors?.[0]?.[0]]).toEqual([422, 'machine.box']);
  });

  test('1,015 hPa typed at 1,600 m', async () => {
    const hours = NIGHT.hours.map((hour) => ({ ...hour, pressureHpa: 1015 }));
    const { status, errors } = await refused(night({ event: { ...NIGHT.event, elevationM: 1600 }, hours }));
    expect(status).toBe(422);
    expect(errors).toHaveLength(NIGHT.hours.length);
    expect(errors?.[0]?.[0]).toBe('hours[0].pressureHpa');
    expect(errors?.[0]?.[1]).toMatch(/^1015\u00a0hPa cannot be the station pressure at 1,600\u00a0m/);
  });

  test('no runs, and no hours', async () => {
    expect((await refused(withEvent({ runs: [] }))).errors?.[0]).toEqual([
      'event.runs',
      'There is no run to plan for. Add at least one run with a start and an end.',
    ]);
    expect((await refused(night({ hours: [] }))).errors?.[0]?.[0]).toBe('hours');
  });

  test('hours of another day', async () => {
    const { status, errors } = await refused(night({ hours: hoursFrom('2027-01-20T00:00:00Z', 4) }));
    expect(status).toBe(422);
    expect(errors?.[0]?.[1]).toContain('from 2027-01-19 18:00 to 2027-01-19 21:00; no run lies in them');
  });

  test('a run that ends before it starts, by its name', async () => {
    const runs = [{ name: 'Final', start: '2027-01-16T23:50:00-06:00', end: '2027-01-16T00:10:00-06:00' }];
    expect((await refused(withEvent({ runs }))).errors).toEqual([
      [
        'event.runs[0].end',
        'Final ends before it starts. A run past midnight needs the next day’s date on its end.',
      ],
    ]);
  });

  test('a bad machine among several, by its place', async () => {
    const { machine, ...shared } = NIGHT;
    const machines = [{ machine }, { machine: { ...machine, box: [] } }];
    const { errors } = await refused({ ...shared, machines });
    expect(errors?.map(([path]) => path)).toEqual(['machines[1].machine.box']);
  });

  test('61 runs and 401 hours', async () => {
    const [run] = NIGHT.event.runs;
    const runs = Array.from({ length: 61 }, () => run);
    const hours = hoursFrom('2027-01-01T00:00:00Z', 401);
    const { status, errors } = await refused({ ...NIGHT, event: { ...NIGHT.event, runs }, hours });
    expect(status).toBe(400);
    expect(errors).toEqual([
      ['event.runs', 'at most 60 runs'],
      ['hours', 'at most 400 hours'],
    ]);
  });

  test('more settings than can be graded while somebody waits, of one machine or of many together', async () => {
    const { machine, ...shared } = NIGHT;
    const carburettors = [390, 402, 411, 423, 437, 449].map((main) => ({ main }));
    const box = Array.from({ length: 100 }, (_, i) => ({ size: 300 + 2 * i, count: 6 }));
    const trim = { lowest: -20, highest: 40, baseline: 0, percentPerPosition: 0.05 };
    const [run] = shared.event.runs;
    const event = { ...shared.event, runs: Array.from({ length: 60 }, () => run) };
    const huge = { ...machine, carburettors, box, trim };
    const one = await refused({ ...shared, event, machine: huge });
    expect([one.status, one.errors]).toEqual([
      422,
      [['machine', expect.stringContaining('36600 settings (jets times trim positions) over')]],
    ]);
    const { trim: _, ...large } = huge;
    const many = await refused({ ...shared, event, machines: Array(30).fill({ machine: large }) });
    expect(many.errors).toEqual([
      ['machines', expect.stringMatching(/^30 machines are too much to work out at once/)],
    ]);
  });
});

function hoursFrom(utc: string, count: number): PlanBody['hours'] {
  return Array.from({ length: count }, (_, i) => ({
    time: new Date(Date.parse(utc) + i * 3_600_000).toISOString(),
    temperatureC: -5 - i / 10,
    pressureHpa: 985,
    relativeHumidity: 0.8,
  }));
}

function messageOf(
  plan: { readonly warnings: readonly { code: string; message: string }[] },
  code: string,
): string {
  return plan.warnings
    .filter((warning) => warning.code === code)
    .map(({ message }) => message)
    .join(' ');
}
