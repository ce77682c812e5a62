import { describe, expect, test } from 'vitest';
import { planAnswerSchema } from '@/lib/contract/plan-answer';
import { answerOf, askPlan, type PlanBody } from './ask';
import { NIGHT, night, withMachine } from './night';

const planOf = async (body: PlanBody) => answerOf(await askPlan(body), planAnswerSchema);
const codes = async (body: PlanBody) => (await planOf(body)).warnings.map(({ code }) => code);

describe('POST /api/plan asks back', () => {
  test('whether a 410 marked by bore is a hole of 4.10 mm, until it is told so', async () => {
    const plan = await planOf(withMachine({ jetMarking: 'bore' }));
    const asked = plan.warnings.filter(({ code }) => code === 'marking-in-doubt');
    expect(asked.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Marked by bore, a 410 has a hole of 4\.10 mm\. .*Is 410 its flow\?/),
    ]);
    expect(plan.runs).toHaveLength(4);
    expect(await codes(withMachine({ jetMarking: 'bore', markingSure: true }))).not.toContain(
      'marking-in-doubt',
    );
    expect(await codes(night())).not.toContain('marking-in-doubt');
  });

  test('and the other way round for sizes that go in steps of 2.5', async () => {
    const box = [160, 162.5, 165, 167.5].map((size) => ({ size, count: 2 }));
    const carburettors = [{ main: 162.5 }, { main: 162.5 }];
    expect(await codes(withMachine({ box, carburettors }))).toContain('marking-in-doubt');
    expect(await codes(withMachine({ box, carburettors, jetMarking: 'bore' }))).not.toContain(
      'marking-in-doubt',
    );
  });
});

describe('POST /api/plan after a reading', () => {
  test('gives every hour as it was sent beside what it became', async () => {
    const readings = [{ id: 'r', time: '2027-01-16T18:00:00-06:00', temperatureC: -12 }];
    const plan = await planOf(night({ readings }));
    plan.hours.forEach(({ given, air }, i) => {
      expect(given.temperatureC).toBeCloseTo(-7 - 3 * i, 9);
      expect(given.stationPressureHpa).toBeCloseTo(986 + 0.5 * i, 9);
      expect(air.temperatureC).toBeLessThan(given.temperatureC);
    });
    for (const run of plan.runs) expect(run.air.temperatureC).toBeLessThan(run.givenTemperatureC);
    expect(NIGHT.hours).toHaveLength(plan.hours.length);
  });
});
