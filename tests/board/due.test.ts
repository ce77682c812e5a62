import { describe, expect, it } from 'vitest';
import { dueMessages, NOTHING_TOLD, type ToldSoFar } from '@/lib/board/due';
import { jobKey, timeOfJob } from '@/lib/board/job-time';
import { nextLook, nextTurn } from '@/lib/board/next-look';
import type { Job } from '@/lib/standing/job';
import type { Standing } from '@/lib/standing/standing';
import { addMinutes, type Instant, instant } from '@/lib/time/instant';

const SIX = instant(Date.parse('2027-01-16T18:00:00-06:00'));
const at = (minutes: number) => addMinutes(SIX, minutes);
const setting = (main: number) => ({ mains: [main], trim: null });

/** Two runs, at 19:00 and at 22:00; a swap takes 20 minutes. */
const RUNS = [
  { start: at(60), end: at(70) },
  { start: at(240), end: at(250) },
];

type Plan = Standing['plan'];
const plan = (now: Instant): Plan =>
  ({
    sortedRuns: RUNS,
    runs: RUNS.map(({ start }, run) => ({ run, state: start > now ? 'planned' : 'past' })),
  }) as unknown as Plan;
const swap = (main: number, beforeRun = 1, now = SIX): Job =>
  ({
    kind: 'swap',
    swap: {
      to: setting(main),
      beforeRun,
      windowStart: instant(Math.max(now, RUNS[beforeRun - 1]?.end ?? now)),
      latestStart: addMinutes(RUNS[beforeRun]!.start, -20),
      readyBy: RUNS[beforeRun]!.start,
    },
  }) as unknown as Job;
const hold = (main: number): Job => ({ kind: 'hold', setting: setting(main), runs: [] });
const danger = (main: number): Job => ({ kind: 'do-not-race', setting: setting(main), runs: [] });
const over: Job = { kind: 'over' };

type Step = { readonly job: Job; readonly minute: number; readonly stale?: boolean; readonly own?: boolean };

/** What is told over an evening of plannings, from nothing on. */
function told(...steps: readonly Step[]): readonly string[] {
  let known: ToldSoFar = NOTHING_TOLD;
  return steps.flatMap(({ job, minute, stale = false, own = false }) => {
    const now = at(minute);
    const standing = { now, plan: plan(now), job } as unknown as Standing;
    const due = dueMessages(known, { standing, now, stale, ownAct: own });
    known = due.told;
    return due.messages.map(({ kind }) => `${minute} ${kind}`);
  });
}

describe('what followers are told', () => {
  it('is nothing when a night is posted, and nothing while the job stays', () => {
    expect(
      told({ job: swap(420), minute: 0 }, { job: swap(420), minute: 15 }, { job: swap(420), minute: 30 }),
    ).toEqual([]);
  });

  it('is a change of what goes in, once, and again when it comes back', () => {
    expect(
      told(
        { job: swap(420), minute: 0 },
        { job: swap(430), minute: 15 },
        { job: swap(430), minute: 30 },
        { job: swap(420), minute: 45 },
        { job: hold(410), minute: 60 },
      ),
    ).toEqual(['15 changed', '45 changed', '60 changed']);
  });

  it('is the time of the job once: in the last hour before it must be begun', () => {
    // 22:00 less 20 minutes for the swap, less an hour: 20:40.
    expect(timeOfJob(plan(SIX), swap(420) as never)).toBe(at(160));
    expect(
      told(
        { job: swap(420), minute: 0 },
        { job: swap(420), minute: 159 },
        { job: swap(420), minute: 160 },
        { job: swap(420), minute: 161 },
        { job: swap(420), minute: 219 },
      ),
    ).toEqual(['160 time']);
  });

  it('is not the time of a job that was told as new just now, or that is too late to begin', () => {
    expect(
      told({ job: hold(410), minute: 0 }, { job: swap(420), minute: 170 }, { job: swap(420), minute: 171 }),
    ).toEqual(['170 changed']);
    expect(told({ job: swap(420), minute: 0 }, { job: swap(420), minute: 230 })).toEqual([]);
  });

  it('is good news only when it has held for a quarter of an hour, bad news at once', () => {
    expect(
      told(
        { job: hold(410), minute: 0 },
        { job: danger(410), minute: 15 },
        { job: hold(410), minute: 20 },
        { job: danger(410), minute: 30 },
        { job: hold(410), minute: 45 },
        { job: hold(410), minute: 59 },
        { job: hold(410), minute: 60 },
      ),
    ).toEqual(['15 changed', '60 changed']);
  });

  it('is not what they have said themselves, nor that all is over', () => {
    expect(
      told(
        { job: swap(420), minute: 0 },
        { job: hold(420), minute: 200, own: true },
        { job: over, minute: 300 },
      ),
    ).toEqual([]);
  });

  it('is that the forecast is old, once until there is a newer one', () => {
    expect(
      told(
        { job: hold(410), minute: 0 },
        { job: hold(410), minute: 15, stale: true },
        { job: hold(410), minute: 30, stale: true },
        { job: hold(410), minute: 45 },
        { job: hold(410), minute: 60, stale: true },
        { job: over, minute: 300, stale: true },
      ),
    ).toEqual(['15 stale', '60 stale']);
  });

  it('goes by what is to be done, not by the moment it was planned in', () => {
    expect(jobKey(swap(420, 0, at(5)))).toBe(jobKey(swap(420, 0, at(20))));
    expect(jobKey(swap(420, 0))).not.toBe(jobKey(swap(420, 1)));
  });
});

describe('the next look', () => {
  const standing = (job: Job, now: Instant) => ({ now, plan: plan(now), job }) as unknown as Standing;

  it('comes 15 minutes before a job, when it comes, when it must be begun, and when a run starts', () => {
    const turns: number[] = [];
    for (let now: Instant | null = at(71); now !== null; ) {
      now = nextTurn([standing(swap(420, 1, now), now)], now);
      if (now !== null) turns.push((now - SIX) / 60_000);
    }
    const lateBySecond = 220 + 1 / 60;
    expect(turns).toEqual([145, 160, lateBySecond, 240, 250]);
  });

  it('comes every quarter of an hour for a newer forecast, and never when all runs are over', () => {
    expect(nextLook(at(100), SIX)).toBe(at(15));
    expect(nextLook(at(10), SIX)).toBe(at(10));
    expect(nextLook(nextTurn([standing(over, at(251))], at(251)), at(251))).toBeNull();
  });
});
