import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { delayOutcome, minutesToSpare } from '@/lib/plan/delay';
import { addMinutes } from '@/lib/time/instant';
import { delayWarning, spareWords } from '@/lib/words/delay';
import { at, FIRST_START, on, planOf, rounds, ZONE } from '../words/plan-of';

/** Six rounds of ten minutes at 19:30, 20:30 ... 00:30; hours from 19:30 to the given end. */
const nightTo = (end: string) =>
  planOf(
    Array.from({ length: 6 }, () => on(410)),
    { hoursEnd: at(end) },
  );
const plan = nightTo('2027-01-17T01:00:00-06:00');
const say = (from: number, minutes: number) => delayWarning(plan, { from, minutes }, { zone: ZONE });

describe('a delay', () => {
  it('is told before it happens where it runs off the end of the hours', () => {
    expect(say(2, 20)).toBeNull();
    expect(say(2, 21)).toBe(
      '21 minutes later, Round 6 would be past the end of the hours at 01:00: no call for it. Add hours under Hours, or renew the forecast.',
    );
    expect(say(2, 90)).toMatch(/^90 minutes later, Round 5 and Round 6 would be past .* no call for them\./);
  });

  it('names runs that come before the hours as well', () => {
    expect(say(0, -15)).toMatch(/^15 minutes earlier, Round 1 would be before the hours begin at 19:30/);
    expect(say(1, -15)).toBeNull();
  });

  it('says nothing of runs it does not move, nor of those outside already', () => {
    const short = nightTo('2027-01-16T23:00:00-06:00');
    expect(delayOutcome(short, { from: 4, minutes: 10 }).beyond).toEqual([]);
    expect(delayOutcome(short, { from: 0, minutes: 30 }).beyond).toEqual([3]);
  });

  it('moves out exactly the runs that end later than the hours, for any delay', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5 }), fc.integer({ min: -300, max: 600 }), (from, minutes) => {
        const { beyond, before } = delayOutcome(plan, { from, minutes });
        const moved = plan.sortedRuns.map((run, i) => ({
          i,
          start: i < from ? run.start : addMinutes(run.start, minutes),
          end: i < from ? run.end : addMinutes(run.end, minutes),
        }));
        expect(beyond).toEqual(moved.filter(({ end }) => end > plan.hoursEnd).map(({ i }) => i));
        expect(before).toEqual(moved.filter(({ start }) => start < FIRST_START).map(({ i }) => i));
      }),
    );
  });
});

describe('hours beyond the last run', () => {
  it('are asked for while they are fewer than two', () => {
    expect(minutesToSpare(rounds(6), at('2027-01-17T01:00:00-06:00'))).toBe(20);
    expect(minutesToSpare(rounds(6), at('2027-01-17T00:00:00-06:00'))).toBe(0);
    expect(minutesToSpare([], FIRST_START)).toBeNull();
    expect(spareWords(20)).toMatch(/^The hours end 20 minutes after the last run/);
    expect(spareWords(0)).toMatch(/^The hours end with the last run/);
    expect(spareWords(120)).toBeNull();
  });
});
