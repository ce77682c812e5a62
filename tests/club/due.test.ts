import { describe, expect, it } from 'vitest';
import { dueTogether, isNextWork, urgencyOf } from '@/lib/club/due';
import { addMinutes } from '@/lib/time/instant';
import { makeBriefing } from '@/tests/support/make-briefing';
import { DUSK, runsOf } from '@/tests/support/plan-cases';
import { clubNight, racerOf } from './club-cases';

describe('what is due together', () => {
  const racers = ['a', 'b', 'c'].map((id) => racerOf({ id }));
  const late = racerOf({ id: 'late', runs: runsOf({ first: 22, every: 60, count: 3 }) });
  const { acts } = makeBriefing([...racers, late], clubNight());
  const dues = dueTogether(acts);

  it('is all of one moment, and no act is lost', () => {
    expect(dues.flatMap((due) => due.acts)).toHaveLength(acts.length);
    expect(dues.map(({ at }) => at)).toEqual([...new Set(acts.map(({ at }) => at))]);
    for (const due of dues) expect(due.acts.every(({ at }) => at === due.at)).toBe(true);
    expect(dues[0]?.acts.map(({ racerId }) => racerId)).toEqual(expect.arrayContaining(['a', 'b', 'c']));
  });

  it('is one work with what follows within half an hour of the first', () => {
    const at = (minutes: number) => ({ at: addMinutes(DUSK, minutes), acts: [] });
    const row = [at(0), at(30), at(31)];
    expect(row.map((due) => isNextWork(row, due))).toEqual([true, true, false]);
    expect(isNextWork([], at(0))).toBe(false);
  });
});

it('says how near a moment is', () => {
  const near = (minutes: number) => urgencyOf(addMinutes(DUSK, minutes), DUSK);
  expect([-3, 0, 5, 6, 15, 16].map(near)).toEqual(['now', 'now', 'now', 'soon', 'soon', 'later']);
});
