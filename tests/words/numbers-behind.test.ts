import { describe, expect, test } from 'vitest';
import { ratio } from '@/lib/units/quantity';
import { crossingsSentence } from '@/lib/words/drift';
import { driftText } from '@/lib/words/grades';
import { oneSwapLess, runnerUpSentence } from '@/lib/words/price';
import { riskSentence } from '@/lib/words/risk';
import { countOf, crossing, on, plain, planOf, runOn, standOn, swapTo, ZONE } from './plan-of';

const runs = [runOn(0, on(410)), runOn(1, on(420))];
const swaps = [swapTo(1, on(410), on(420))];
const stayed = [runOn(0, on(410)), runOn(1, on(410))];

describe('The price of one swap less', () => {
  test('is power, and seconds where the runs are timed', () => {
    const bySwapCount = [
      countOf(0, stayed, { loss: ratio(0.0075), secondsLost: 0.4 }),
      countOf(1, runs, { loss: ratio(0.001), secondsLost: 0.05 }),
    ];
    const plan = planOf([on(410), on(420)], { runs, swaps, bySwapCount });
    expect(plain(oneSwapLess(plan))).toBe(
      'Without the swap: 0.65 % less power, 0.35 s slower over the timed runs.',
    );
  });

  test('names the runs it puts in danger first', () => {
    const bySwapCount = [
      countOf(0, stayed, { loss: ratio(0.0075), leanRunsOverRisk: 1, richRuns: 2 }),
      countOf(1, runs, { loss: ratio(0.001) }),
    ];
    const plan = planOf([on(410), on(420)], { runs, swaps, bySwapCount });
    expect(plain(oneSwapLess(plan))).toBe(
      'Without the swap: 1 more run in danger of running lean, 2 more runs too rich, 0.65 % less power.',
    );
  });

  test('counts no power that comes from running leaner', () => {
    const lean = [
      countOf(0, stayed, { loss: ratio(0), secondsLost: 0, leanRunsOverRisk: 6 }),
      countOf(1, runs, { loss: ratio(0.0003), secondsLost: 0.001 }),
    ];
    const plan = planOf([on(410), on(420)], { runs, swaps });
    expect(plain(oneSwapLess({ ...plan, bySwapCount: lean }))).toBe(
      'Without the swap: 6 more runs in danger of running lean, no power to count on.',
    );
  });

  test('names no difference that would print as nothing', () => {
    const plan = planOf([on(410), on(420)], { runs, swaps });
    const priceOf = (richRuns: number) =>
      oneSwapLess({
        ...plan,
        bySwapCount: [
          countOf(0, stayed, { loss: ratio(0.00031), secondsLost: 0.054, richRuns }),
          countOf(1, runs, { loss: ratio(0.0003), secondsLost: 0.05 }),
        ],
      });
    expect(priceOf(1)).toBe('Without the swap: 1 more run too rich.');
    expect(priceOf(0)).toBe('Without the swap: nothing lost that shows.');
  });

  test('does not exist where there is no swap to leave out', () => {
    expect(oneSwapLess(planOf([on(410)]))).toBeNull();
  });
});

describe('The runner-up', () => {
  test('is named by the run where it first differs, and by its margin', () => {
    const runnerUp = { settings: [on(420), on(420)], margin: ratio(0.0012) };
    expect(plain(runnerUpSentence(planOf([on(410), on(420)], { runnerUp })))).toBe(
      'Almost as good: 420 in Round 1, behind by 0.12 % power.',
    );
    const later = { settings: [on(410), on(410)], margin: ratio(0.00001) };
    expect(plain(runnerUpSentence(planOf([on(410), on(420)], { runnerUp: later })))).toBe(
      'Almost as good: 410 in Round 2, as good in power.',
    );
  });

  test('is not invented', () => {
    expect(runnerUpSentence(planOf([on(410)]))).toBeNull();
  });
});

describe('How sure', () => {
  test('is told by the worst run to come, in counts', () => {
    const unsure = [
      runOn(0, on(410), { chanceOfLean: ratio(1 / 64), leanCount: { lean: 1, of: 64 } }),
      runOn(1, on(410), { chanceOfLean: ratio(3 / 64), leanCount: { lean: 3, of: 64 } }),
    ];
    expect(riskSentence(standOn(planOf([on(410), on(410)], { runs: unsure })))).toBe(
      'Risk of lean: 3 in 64, Round 2.',
    );
    expect(riskSentence(standOn(planOf([on(410)])))).toBe('Risk of lean: under 1 in 64.');
  });

  test('does not look back at runs already made', () => {
    const made = [runOn(0, on(410), { state: 'made', leanCount: { lean: 30, of: 64 } }), runOn(1, on(410))];
    expect(riskSentence(standOn(planOf([on(410), on(410)], { runs: made })))).toBe(
      'Risk of lean: under 1 in 64.',
    );
  });
});

describe("The baseline's own drift", () => {
  test('is written out with its crossings and their ranges', () => {
    const crossings = [
      crossing('2027-01-16T21:40:00-06:00'),
      crossing('2027-01-17T02:15:00-06:00', { to: 'right', latest: null }),
    ];
    expect(crossingsSentence(planOf([on(410)], { crossings }), { zone: ZONE })).toBe(
      'The baseline 410 is good at the start of the hours; it turns lean about 21:40 (21:10 to 22:20) and good about 02:15 (01:45 at the earliest, in some forecasts not at all).',
    );
  });

  test('without crossings is said to stay', () => {
    expect(crossingsSentence(planOf([on(410)]), { zone: ZONE })).toBe(
      'The baseline 410 stays good through all the hours.',
    );
  });

  test('never stands without its word', () => {
    expect(plain(driftText(ratio(-0.0234), 'lean'))).toBe('−2.3 %, lean');
    expect(plain(driftText(ratio(0.004), 'right'))).toBe('+0.4 %, good');
  });
});
