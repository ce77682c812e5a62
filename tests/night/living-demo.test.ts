import { describe, expect, it } from 'vitest';
import { isLiving } from '@/lib/night/living-demo';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';
import { isoUtc } from '@/lib/time/zone';
import { followedDemo } from '@/tests/support/followed-demo';
import { nightCase } from './night-case';

/** Every quarter of an hour of three days. Clocks in Chicago change on 14 March and 7 November 2027 (tz database). */
const THREE_DAYS = ['2027-01-15', '2027-03-13', '2027-11-06'].map((date) => ({
  date,
  moments: Array.from({ length: 3 * 96 }, (_, quarter) =>
    addMinutes(instant(Date.parse(`${date}T05:00:00Z`)), quarter * 15),
  ),
}));

/** What is wrong with the demo opened at a moment; null where it is a living night. */
function complaint(now: Instant): string | null {
  const { plan, night, standing } = nightCase(now);
  const wrong = [
    plan.runs.some(({ state }) => state === 'planned') ? '' : 'no run to come',
    plan.runs.some(({ state }) => state === 'beyond-hours') ? 'runs leave the hours' : '',
    standing.mixture?.at === now ? '' : 'no air of now',
    isLiving(night.records.event.value, now) ? '' : 'would be dated anew at once',
  ].filter((words) => words !== '');
  return wrong.length === 0 ? null : `${isoUtc(now)}: ${wrong.join(', ')}`;
}

describe('the demo opened at any time', () => {
  it.each(THREE_DAYS)('is a night with a run to come in the days from $date', ({ moments }) => {
    expect(moments.flatMap((now) => complaint(now) ?? [])).toEqual([]);
  });

  it('lives on while a visitor has delayed its runs, and not a moment longer', () => {
    const now = instant(Date.parse('2027-01-17T01:00:00Z'));
    const { event } = followedDemo(now);
    const late = { ...event, event: { ...event.event, runs: event.event.runs.map(later(90)) } };
    const lastStart = Date.parse('2027-01-17T01:45:00-06:00');
    expect(isLiving(late, instant(lastStart))).toBe(true);
    expect(isLiving(late, instant(lastStart + 1))).toBe(false);
  });

  it('does not stay on an evening to come where the device’s date was wrong', () => {
    const { event } = followedDemo(instant(Date.parse('2027-01-20T01:00:00Z')));
    expect(isLiving(event, instant(Date.parse('2027-01-17T01:00:00Z')))).toBe(false);
  });
});

type Timed = { readonly start: string; readonly end: string };

const later =
  (minutes: number) =>
  <T extends Timed>(run: T): T => {
    const moved = (time: string) => isoUtc(addMinutes(instant(Date.parse(time)), minutes));
    return { ...run, start: moved(run.start), end: moved(run.end) };
  };
