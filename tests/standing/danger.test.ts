import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { METRIC_UNITS } from '@/lib/units/choice';
import { ratio } from '@/lib/units/quantity';
import { callSentence } from '@/lib/words/call';
import { jobWords } from '@/lib/words/job';
import { machineOf, requestOf, seriesOf } from '@/tests/support/plan-cases';

const stand = (given: Partial<PlanRequest>) => {
  const request = requestOf(given);
  return standingOf(request, expectOk(makePlan(request)));
};
const boxOf = (...sizes: readonly number[]) => sizes.map((size) => ({ size, count: 1 }));
const voice = { zone: 'UTC', units: METRIC_UNITS };
const HOLDS = /\bholds?\b(?! it wide open)|to the end/;

describe('A box with no jet rich enough', () => {
  const standing = stand({ machine: machineOf({ box: boxOf(400, 410) }) });

  it('says not to race, in which runs, and what to borrow, and never that anything holds', () => {
    expect(standing.dangers).toMatchObject([{ grade: 'lean', why: 'no-jet', sizes: [430] }]);
    const call = callSentence(standing, voice);
    expect(call).toMatch(/^Do not race Rounds 4 to 12 on 410: risk of lean up to \d\d in 64\./);
    expect(call).toContain('borrow 430.');
    expect(call).not.toMatch(HOLDS);
    expect(standing.job.kind).toBe('do-not-race');
    expect(jobWords(standing, 'UTC').lead).toBe('Do not race on 410');
  });

  it('says the same with trim, which was used first', () => {
    const trim = { lowest: 1, highest: 3, baseline: 2, richerPerPosition: ratio(0.01) };
    const trimmed = stand({ machine: machineOf({ box: boxOf(410), trim }) });
    const [danger] = trimmed.dangers;
    expect(danger!.runs.every(({ setting }) => setting.trim === 3)).toBe(true);
    expect(danger!.runs.length).toBeLessThan(standing.dangers[0]!.runs.length);
  });
});

describe('A jet that is too rich to run', () => {
  const baseline = { carburettors: [{ main: 170 }] };

  it('is no way out of a lean one, however safe it is', () => {
    const standing = stand({ machine: machineOf({ ...baseline, box: boxOf(170, 340) }) });
    expect(standing.plan.runs.every(({ setting }) => setting.mains[0] === 170)).toBe(true);
    expect(standing.dangers).toMatchObject([{ grade: 'lean', why: 'no-jet' }]);
    const [size] = standing.dangers[0]!.sizes!;
    expect(size).toBeGreaterThan(170);
    expect(size).toBeLessThan(190);
    expect(size! % 2.5).toBe(0);
    expect(callSentence(standing, voice)).not.toContain('340');
  });

  it('is no plan by itself either, and says what share of the power is gone', () => {
    const standing = stand({
      machine: machineOf({ ...baseline, box: boxOf(340) }),
      fitted: { mains: [340], trim: null },
    });
    expect(standing.dangers[0]).toMatchObject({ grade: 'drowned', why: 'no-jet' });
    expect(callSentence(standing, voice).replaceAll('\u00a0', ' ')).toContain('loses over 20 % of its power');
    expect(callSentence(standing, voice)).not.toMatch(HOLDS);
  });

  it('is planned away from where a jet that runs is owned', () => {
    const standing = stand({
      machine: machineOf({ ...baseline, box: boxOf(170, 175, 180, 185, 340) }),
      fitted: { mains: [340], trim: null },
    });
    expect(standing.dangers).toEqual([]);
    expect(standing.plan.swaps[0]).toMatchObject({ beforeRun: 0, reason: { code: 'old-drowned' } });
  });
});

describe('A jet that is a little too rich', () => {
  it('is raced on, and costs power', () => {
    const standing = stand({
      machine: machineOf({ box: boxOf(460) }),
      fitted: { mains: [460], trim: null },
      series: seriesOf(new Array<number>(17).fill(0)),
    });
    expect(standing.dangers).toEqual([]);
    expect(standing.plan.runs[0]!.grade).toBe('rich');
    expect(callSentence(standing, voice)).toContain('It runs rich, which costs power.');
  });
});
