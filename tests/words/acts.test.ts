import { describe, expect, test } from 'vitest';
import type { Swap } from '@/lib/plan/types';
import { ratio } from '@/lib/units/quantity';
import { actSentences } from '@/lib/words/acts';
import { on, plain, planOf, swapTo, ZONE } from './plan-of';

const night = [on(410), on(420)];
const actsOf = (swap: Parameters<typeof swapTo>[3]) =>
  actSentences(planOf(night, { swaps: [swapTo(1, on(410), on(420), swap)] }), { zone: ZONE });

describe('An act', () => {
  test('says what, where, when, why and what happens if it is skipped', () => {
    const [act] = actsOf({});
    expect(act).toMatchObject({
      act: 'Put in 420',
      where: 'between Round 1 and Round 2',
      window: '22:05 to 22:25',
      begin: 'Begin by 22:25, ready by 22:40.',
      why: '410 goes lean by Round 2, risk 5 in 64. The swap is for safety, not for power.',
      ifSkipped: '',
    });
  });

  test('for power says what it gains', () => {
    const [act] = actsOf({ reason: { code: 'power', gain: ratio(0.0123) } });
    expect(plain(act?.why ?? null)).toBe('It gains 1.2 % power over 410.');
  });

  test('names every cause, and no gain where there is none', () => {
    const why = (reason: Swap['reason']) => actsOf({ reason })[0]?.why;
    expect(why({ code: 'old-turns-rich', run: 1 })).toBe('410 is too rich by Round 2, which costs power.');
    expect(why({ code: 'old-drowned', run: 1 })).toBe('410 is so rich by Round 2 that it may not run.');
    expect(why({ code: 'as-accepted' })).not.toMatch(/gain|power/);
  });

  test('left out says what it costs where that is not told already, and no loss where none shows', () => {
    const skipped = (loss: number) =>
      actsOf({
        reason: { code: 'old-turns-rich', run: 1 },
        ifSkipped: { chanceOfLean: ratio(0), count: { lean: 0, of: 64 }, loss: ratio(loss) },
      })[0]?.ifSkipped;
    expect(plain(skipped(0.006) ?? null)).toBe('Left out, 410 loses 0.6 % power.');
    expect(skipped(0.0004)).toBe('');
  });

  test('names every jet where jets that were set apart become alike', () => {
    const swap = swapTo(1, on(410, 400, 410), on(400, 400, 400));
    const [act] = actSentences(planOf(night, { swaps: [swap] }), { zone: ZONE });
    expect(act?.act).toBe('Put in 400 400 400');
  });

  test('names jets and trim together when both change', () => {
    const swap = swapTo(1, { mains: [410], trim: 2 }, { mains: [420], trim: 1 });
    const [act] = actSentences(planOf(night, { swaps: [swap] }), { zone: ZONE });
    expect(act?.act).toBe('Put in 420 and set trim to 1');
  });
});
