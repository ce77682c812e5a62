import { describe, expect, it } from 'vitest';
import { acceptedAs, changedSince } from '@/lib/night/accepted-of-night';
import { at, on, planOf, runOn, swapTo } from '@/tests/words/plan-of';

/** Rounds an hour apart from 19:30, ten minutes long: 420 was accepted from Round 2 on. */
const ACCEPTED = [on(410), on(420), on(420), on(420), on(420)];

/** 22:05, 410 is in: too late for Round 4 at 22:30, so that 420 goes in for Round 5; `made` is what was in until then. */
function movedFrom(made: readonly number[]) {
  const settings = [...made.map((main) => on(main)), on(410), on(420)];
  const plan = planOf(settings, {
    runs: settings.map((setting, run) => runOn(run, setting, { state: run < 3 ? 'past' : 'planned' })),
    inNow: { setting: on(410), known: 'told' },
    swaps: [swapTo(4, on(410), on(420))],
  });
  const accepted = acceptedAs({ accepted: ACCEPTED, fitted: on(410), air: [] }, plan);
  const [change] = changedSince(accepted!, plan).changes;
  return change?.code === 'swap-moved' ? change.from.windowStart : change;
}

describe('a swap that was accepted for a run that is over, and that is still to be made', () => {
  it('is the one of its own time where its jets were never in', () => {
    expect(movedFrom([410, 410, 410])).toBe(at('2027-01-16T19:40:00-06:00'));
  });

  it('is one in the gap before the next run where its jets were in, and came out again', () => {
    expect(movedFrom([410, 420, 410])).toBe(at('2027-01-16T21:40:00-06:00'));
  });
});
