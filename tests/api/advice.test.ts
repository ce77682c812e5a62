import { beforeAll, describe, expect, test } from 'vitest';
import { type PlanAnswer, planAnswerSchema } from '@/lib/contract/plan-answer';
import { chicago } from '@/tests/night/night-case';
import { followedDemo } from '@/tests/support/followed-demo';
import { answerOf, askPlan, type PlanBody } from './ask';
import { NIGHT, night, withMachine } from './night';

const planOf = async (body: PlanBody) => answerOf(await askPlan(body), planAnswerSchema);
const boxOf = (...sizes: readonly number[]) => sizes.map((size) => ({ size, count: 3 }));

/** All that an answer says in words. */
const wordsOf = ({ call, standing, swaps, warnings }: PlanAnswer) =>
  [
    call,
    standing.question?.words ?? '',
    ...standing.dangers.map(({ words }) => words),
    standing.risk,
    ...swaps.map(({ words }) => words),
    ...warnings.map(({ message }) => message),
  ].join('\n');

const HOLDS = /\bholds?\b(?! it wide open)|to the end/;

describe('A box in which no jet is rich enough', () => {
  const box = boxOf(400, 410);
  let answer: PlanAnswer;
  beforeAll(async () => {
    answer = await planOf(withMachine({ box }));
  });

  test('is answered with what not to race, what to borrow and what helps, and with nothing that holds', () => {
    expect(answer.standing.job.kind).toBe('do-not-race');
    expect(wordsOf(answer)).not.toMatch(HOLDS);
    expect(answer.call).toMatch(/^Do not race Rounds \d.* on 410: risk of lean up to \d+ in 64\./);
    expect(answer.call).toMatch(/borrow \d{3}\. Without it sit them out\./);
    expect(answer.call).toContain('lift early');
  });

  test('names sizes that can be had: a step of the box or of the list', async () => {
    for (const size of answer.standing.dangers.flatMap(({ borrow }) => borrow ?? []))
      expect(size % 10).toBe(0);
    const list = [405, 433, 437, 444, 471].map((size) => ({ size, area: size / 1000 }));
    const listed = await planOf(
      withMachine({
        carburettors: [{ main: 405 }, { main: 405 }],
        jetMarking: { list },
        box: boxOf(405),
      }),
    );
    const borrow = listed.standing.dangers.flatMap((danger) => danger.borrow ?? []);
    expect(borrow.length).toBeGreaterThan(0);
    for (const size of borrow) expect(list.map((jet) => jet.size)).toContain(size);
  });
});

describe('A jet twice the baseline', () => {
  const one = { carburettors: [{ main: 170 }] };

  test('is neither fitted nor said to hold, however lean the other one is', async () => {
    const answer = await planOf(withMachine({ ...one, box: boxOf(170, 340) }));
    for (const { setting } of answer.runs) expect(setting.mains).toEqual([170]);
    expect(answer.swaps).toEqual([]);
    expect(wordsOf(answer)).not.toMatch(/340/);
    expect(wordsOf(answer)).not.toMatch(HOLDS);
    for (const size of answer.standing.dangers.flatMap(({ borrow }) => borrow ?? [])) {
      expect(size).toBeLessThan(200);
      expect(size % 2.5).toBe(0);
    }
  });

  test('is planned away from where it is in, and is an answer even where runs are timed', async () => {
    const runs = NIGHT.event.runs.map((run) => ({ ...run, typicalSeconds: 6.4 }));
    const fitted = { mains: [340] };
    const timed = { ...withMachine({ ...one, box: boxOf(170, 175, 180, 185, 340) }), fitted };
    const answer = await planOf({ ...timed, event: { ...NIGHT.event, runs } });
    expect(answer.swaps[0]).toMatchObject({ beforeRun: 0, reason: { code: 'old-drowned' } });
    for (const { setting } of answer.runs) expect(setting.mains[0]).toBeLessThan(200);
  });
});

describe('Jets that are set apart', () => {
  const demo = followedDemo(chicago('2027-01-16', '18:15'));
  const staggered = (elevationM: number): PlanBody => ({
    machine: demo.machine.machine,
    event: { ...demo.event.event, elevationM },
    // No pressure: that of the standard atmosphere at the height of the track.
    hours: (demo.event.typed?.hours ?? []).map(({ time, temperatureC }) => ({ time, temperatureC })),
    now: '2027-01-16T18:15:00-06:00',
  });

  test('stay so at 5,280 ft, and every one of them is named', async () => {
    const answer = await planOf(staggered(1609.344));
    const { standing, runs, swaps, call } = answer;
    expect(standing.inNow.setting.mains).toEqual([410, 400, 410]);
    expect(swaps.length).toBeGreaterThan(0);
    for (const { setting } of runs)
      expect(setting.mains.map((main) => main - setting.mains[1]!)).toEqual([10, 0, 10]);
    for (const [, jets] of call.matchAll(/(?:Fit|Start on) (\S+)/g)) expect(jets).toMatch(/^\d+\/\d+\/\d+$/);
  });
});

describe('A reason', () => {
  test('names the run the old jets are lean in and its count, and no clock time of a crossing', async () => {
    const answer = await planOf(night());
    const lean = answer.swaps.filter(({ reason }) => reason.code === 'old-turns-lean');
    expect(lean.length).toBeGreaterThan(0);
    for (const { words, reason } of lean) {
      const { lean: count, of } = reason.leanCount!;
      expect(words).toContain(`lean by ${answer.runs[reason.run!]!.name}, risk ${count} in ${of}`);
      expect(count / of).toBeGreaterThan(0.05);
    }
    expect(wordsOf(answer)).not.toMatch(/turns lean|gains [−-]|gains 0[. ]/);
  });
});
