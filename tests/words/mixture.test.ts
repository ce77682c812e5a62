import { expect, it } from 'vitest';
import type { Mixture } from '@/lib/standing/mixture';
import { ratio } from '@/lib/units/quantity';
import { mixtureWords } from '@/lib/words/mixture';
import { on, planOf, runOn, standOn, ZONE } from './plan-of';

const LEAN = { grade: 'lean', leanCount: { lean: 12, of: 64 } } as const;
const good = planOf([on(410), on(410)]);
const bad = planOf([on(410), on(410)], { runs: [runOn(0, on(410)), runOn(1, on(410), LEAN)] });
const standing = (plan: typeof good, state: Mixture['state'], run: number | null = null) => {
  const told = standOn(plan);
  return { ...told, mixture: { state, drift: ratio(-0.004), sizes: 0, at: told.now, run } };
};

it('GOOD is the answer while every run to come is, and else is said of now alone', () => {
  expect(mixtureWords(standing(good, 'right'), ZONE)).toMatchObject({ word: 'GOOD', first: true });
  expect(mixtureWords(standing(bad, 'right'), ZONE)).toMatchObject({ word: 'GOOD now', first: false });
  // Of a run to come its name says of when.
  const later = mixtureWords(standing(bad, 'right', 0), ZONE);
  expect(later).toMatchObject({ word: 'GOOD', first: false, drift: expect.stringMatching(/^Round 1, /) });
});

it('LEAN and RICH are told as loudly whatever comes', () => {
  for (const [state, word] of [
    ['lean', 'LEAN'],
    ['rich', 'RICH'],
  ] as const)
    for (const plan of [good, bad])
      expect(mixtureWords(standing(plan, state), ZONE)).toMatchObject({ word, first: true });
});
