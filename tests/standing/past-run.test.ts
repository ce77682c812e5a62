import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { pastRunChoices } from '@/lib/standing/past-run';
import { pastRunWords } from '@/lib/words/log';
import { clock, requestOf } from '@/tests/support/plan-cases';

const on = (main: number) => ({ mains: [main], trim: null });
const choices = (given: Partial<PlanRequest>, run: number) => {
  const request = requestOf(given);
  const plan = expectOk(makePlan(request));
  return pastRunChoices(request, plan, plan.runs[run]!);
};
/** A plan from 410 with 420 before Round 4 at 20:00. */
const accepted = settingsAsGiven(expectOk(makePlan(requestOf())));

describe('A past run of which nobody said anything', () => {
  const now = clock(21);

  it('may be on what was last said to be in, or on what the accepted plan had in', () => {
    expect(choices({ now, accepted }, 3)).toEqual({ said: on(410), accepted: on(420) });
    expect(choices({ now, accepted }, 2)).toEqual({ said: on(410), accepted: null });
    expect(choices({ now }, 3)).toEqual({ said: on(410), accepted: null });
    const fittings = [{ at: clock(18), setting: on(430) }];
    expect(choices({ now, accepted, fitted: on(430), fittings }, 3)).toEqual({
      said: on(430),
      accepted: on(420),
    });
  });

  it('is not asked about once it is told, and not before it begins', () => {
    expect(choices({ now, accepted, made: [{ run: 3, setting: on(420) }] }, 3)).toBeNull();
    expect(choices({ now: clock(18), accepted }, 3)).toBeNull();
  });

  it('is asked about by its name, with the plan named as such', () => {
    const words = pastRunWords('Round 4', { said: on(410), accepted: on(420) });
    expect(words.ask).toBe('Round 4: what was in?');
    expect(words.answers.map(({ label }) => label)).toEqual(['410', '420, as planned']);
  });
});
