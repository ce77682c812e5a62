import { describe, expect, it } from 'vitest';
import { addMinutes, instant } from '@/lib/time/instant';
import { countdown } from '@/lib/words/countdown';

describe('the countdown', () => {
  const now = instant(Date.UTC(2027, 0, 16, 18));

  it.each([
    [0, 'now'],
    [12, 'in 12 min'],
    [72, 'in 1 h 12 min'],
    [120, 'in 2 h'],
    [26 * 60 + 5, 'in 1 d 2 h'],
    [-5, '5 min ago'],
  ])('says %d minutes as "%s"', (minutes, words) => {
    expect(countdown(now, addMinutes(now, minutes))).toBe(words);
  });
});
