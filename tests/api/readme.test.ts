import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { airsAnswerSchema } from '@/lib/contract/air-request';
import { plansAnswerSchema } from '@/lib/contract/plan-answer';
import { answerOf, askAir, askPlan } from './ask';
import { withoutWeather } from './no-weather';

/** The JSON bodies of the README's curl commands, by the path they go to. */
function bodiesOf(path: string): readonly unknown[] {
  const readme = readFileSync('README.md', 'utf8');
  const commands = readme.matchAll(
    new RegExp(`localhost:3000${path} [^']*'content-type: application/json'[^']*-d '([^']+)'`, 'g'),
  );
  return [...commands].map(([, body]) => JSON.parse(body!));
}

describe('The commands in the README', () => {
  withoutWeather();

  test('ask for air that can be answered', async () => {
    const [body, ...others] = bodiesOf('/api/air');
    expect(others).toEqual([]);
    expect((await answerOf(await askAir(body), airsAnswerSchema)).states.length).toBe(1);
  });

  test('ask for the plans of two machines, in their order and with a call each', async () => {
    const [body, ...others] = bodiesOf('/api/plan');
    expect(others).toEqual([]);
    const { plans } = await answerOf(await askPlan(body), plansAnswerSchema);
    expect(plans.map(({ machine }) => machine)).toEqual(['Twin', 'Single']);
    for (const { call } of plans) expect(call).toMatch(/Start on|Put in/);
  });
});
