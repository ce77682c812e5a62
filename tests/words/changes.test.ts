import { describe, expect, test } from 'vitest';
import type { PlanChange } from '@/lib/plan/compared';
import { METRIC_UNITS, US_UNITS } from '@/lib/units/choice';
import { changeSentences } from '@/lib/words/changes';
import { at, on, plain, planOf, swapTo, ZONE } from './plan-of';

const early = swapTo(2, on(410), on(420), { windowStart: at('2027-01-16T21:20:00-06:00') });
const late = swapTo(3, on(410), on(420), { windowStart: at('2027-01-16T22:05:00-06:00') });
const plan = planOf([on(410), on(410), on(420), on(420)]);

const say = (change: PlanChange, units = US_UNITS) =>
  changeSentences({ changes: [change], nextActChanged: true }, plan, { zone: ZONE, units }).map(plain);

describe('What changed between two plans', () => {
  test('is told act by act, with the temperature that moved it', () => {
    const change: PlanChange = { code: 'swap-moved', from: late, to: early, colder: 2.1 };
    expect(say(change)).toEqual([
      'The swap to 420 moved from 22:05 to 21:20, before Round 3: it is now 4 °F colder.',
    ]);
    expect(say(change, METRIC_UNITS)).toEqual([
      'The swap to 420 moved from 22:05 to 21:20, before Round 3: it is now 2.1 °C colder.',
    ]);
  });

  test('says warmer when it is warmer, and nothing when the air hardly moved', () => {
    expect(say({ code: 'swap-dropped', swap: early, colder: -3 })).toEqual([
      'Dropped: the swap to 420 at 21:20 is no longer needed: it is now 5 °F warmer.',
    ]);
    expect(say({ code: 'swap-added', swap: early, colder: 0.1 })).toEqual([
      'New: Put in 420 before Round 3 (21:20).',
    ]);
  });

  test('names another jet for the same act, and another start', () => {
    const richer = { ...early, to: on(430) };
    expect(say({ code: 'swap-target-changed', from: early, to: richer, colder: 0 })).toEqual([
      'The swap at 21:20 is now to 430, not 420.',
    ]);
    expect(say({ code: 'start-changed', from: on(410), to: on(420) })).toEqual([
      'The start moved from 410 to 420.',
    ]);
  });

  test('is silent when nothing changed', () => {
    expect(
      changeSentences({ changes: [], nextActChanged: false }, plan, { zone: ZONE, units: US_UNITS }),
    ).toEqual([]);
  });
});

describe('A dropped swap', () => {
  test('is not laid to air that would rather have asked for it', () => {
    expect(say({ code: 'swap-dropped', swap: early, colder: 4 })).toEqual([
      'Dropped: the swap to 420 at 21:20 is no longer needed.',
    ]);
    const leaner = swapTo(2, on(420), on(410), { windowStart: at('2027-01-16T21:20:00-06:00') });
    expect(say({ code: 'swap-dropped', swap: leaner, colder: 3 })).toEqual([
      'Dropped: the swap to 410 at 21:20 is no longer needed: it is now 5 °F colder.',
    ]);
  });
});
