import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { jobWords } from '@/lib/words/job';
import { requestOf } from '@/tests/support/plan-cases';

/** What is said of a night in which this main jet is in. */
function reasonWith(main: number) {
  const request = requestOf({ fitted: { mains: [main], trim: null } });
  const standing = standingOf(request, expectOk(makePlan(request)));
  return { state: standing.mixture?.state, reason: jobWords(standing, 'UTC').lines.at(-1) };
}

describe('Why jets are to come out', () => {
  it.each([
    [390, 'lean', '390 is lean.'],
    [410, 'right', '410 goes lean by Round 4.'],
    [430, 'rich', 'It gains power over 430.'],
    [440, 'rich', '440 is rich: it costs power.'],
  ])('is what they are now, or what they turn to later: %i', (main, state, reason) => {
    expect(reasonWith(main)).toEqual({ state, reason });
  });
});
