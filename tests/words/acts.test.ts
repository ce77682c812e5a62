import { describe, expect, test } from 'vitest';
import { ratio } from '@/lib/units/quantity';
import { actSentences } from '@/lib/words/acts';
import { crossing, on, plain, planOf, swapTo, ZONE } from './plan-of';

const night = [on(410), on(420)];
const actsOf = (swap: Parameters<typeof swapTo>[3]) =>
  actSentences(planOf(night, { swaps: [swapTo(1, on(410), on(420), swap)] }), { zone: ZONE });

describe('An act', () => {
  test('says what, where, when, why and what happens if it is skipped', () => {
    const [act] = actsOf({});
    expect(act).toMatchObject({
      act: 'Fit 420',
      where: 'between Round 1 and Round 2',
      window: '22:05 to 22:25',
      why: '410 turns lean about 22:40 (22:10 to 23:20): lean in 61 of 64 forecasts if it stays in.',
    });
    expect(plain(act?.ifSkipped ?? null)).toBe(
      'Skipped, 410 is lean in 61 of 64 forecasts and loses 0.6 % power.',
    );
  });

  test('for power says what it gains', () => {
    const [act] = actsOf({ reason: { code: 'power', gain: ratio(0.0123) }, due: null });
    expect(plain(act?.why ?? null)).toBe('It gains 1.2 % power over 410.');
  });

  test('leaves the range open where the old jets may hold after all', () => {
    const [act] = actsOf({ due: crossing('2027-01-16T22:40:00-06:00', { latest: null }) });
    expect(act?.why).toContain('22:45 (22:00 at the earliest, in some forecasts not at all)');
  });

  test('counts a chance too small for one forecast as fewer than one', () => {
    const skipped = (lean: number) => {
      const leanCount = { lean, of: 64 };
      return actsOf({ ifSkipped: { chanceOfLean: ratio(lean / 64), leanCount, loss: ratio(0) } })[0]
        ?.ifSkipped;
    };
    expect(skipped(0)).toContain('lean in fewer than 1 of 64 forecasts');
    expect(skipped(3)).toContain('lean in 3 of 64 forecasts');
  });

  test('skipped says no loss of power where none shows', () => {
    const [act] = actsOf({
      ifSkipped: { chanceOfLean: ratio(0.95), leanCount: { lean: 61, of: 64 }, loss: ratio(0.0004) },
    });
    expect(act?.ifSkipped).toBe('Skipped, 410 is lean in 61 of 64 forecasts.');
  });

  test('names jets and trim together when both change', () => {
    const swap = swapTo(1, { mains: [410], trim: 2 }, { mains: [420], trim: 1 });
    const [act] = actSentences(planOf(night, { swaps: [swap] }), { zone: ZONE });
    expect(act?.act).toBe('Fit 420 and set trim to 1');
  });
});
