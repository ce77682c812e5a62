import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { settingsAsGiven } from '@/lib/plan/settings-as-given';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { standingOf } from '@/lib/standing/standing';
import { addMinutes } from '@/lib/time/instant';
import { METRIC_UNITS } from '@/lib/units/choice';
import { callSentence } from '@/lib/words/call';
import { questionWords } from '@/lib/words/question';
import { clock, requestOf } from '@/tests/support/plan-cases';

const stand = (given: Partial<PlanRequest>) => {
  const request = requestOf(given);
  return standingOf(request, expectOk(makePlan(request)));
};
const on = (main: number) => ({ mains: [main], trim: null });

/** A plan from 410 with 420 before Round 4 at 20:00, accepted an hour before the night. */
const accepted = settingsAsGiven(stand({}).plan);
const [swap] = stand({}).plan.swaps;

describe('An accepted swap that nobody confirmed', () => {
  it('is asked about once its time to begin is over, and not before', () => {
    expect(swap).toMatchObject({ beforeRun: 3, from: on(410), to: on(420) });
    expect(stand({ accepted, now: addMinutes(swap!.latestStart, -1) }).question).toBeNull();
    expect(stand({ accepted, now: swap!.latestStart }).question).toMatchObject({
      from: on(410),
      to: on(420),
      beforeRun: 3,
      since: swap!.latestStart,
      runsSince: [],
    });
  });

  it('counts as not made for every risk, and the call says so first', () => {
    const standing = stand({ accepted, now: clock(21) });
    expect(standing.inNow.setting).toEqual(on(410));
    const next = standing.plan.runs.find(({ state }) => state === 'planned')!;
    expect(next.ifKept.grade).toBe('lean');
    const call = callSentence(standing, { zone: 'UTC', units: METRIC_UNITS });
    expect(call).toMatch(/^Is 420 in\? It was to go in before Round 4, begun by 19:45,/);
    expect(call).toContain(`has a risk of lean of ${next.ifKept.leanCount.lean} in 64`);
  });

  it('is answered by saying that it is in, that it is not, or that something else is', () => {
    const now = clock(21);
    for (const setting of [on(420), on(410), on(430)]) {
      const said = { accepted, now, fitted: setting, fittings: [{ at: now, setting }] };
      expect(stand(said).question).toBeNull();
      expect(stand(said).inNow).toEqual({ setting, known: 'told' });
    }
  });

  it('is still open where something was said before its time was over, and the same is in', () => {
    const fittings = [{ at: clock(19.5), setting: on(410) }];
    expect(stand({ accepted, fitted: on(410), fittings, now: clock(21) }).question).not.toBeNull();
    // What comes without a time is said now.
    expect(stand({ accepted, fitted: on(410), now: clock(21) }).question).toBeNull();
  });

  it('is closed by a run that was told as made on something else', () => {
    const made = [{ run: 4, setting: on(410) }];
    expect(stand({ accepted, made, now: clock(21) }).question).toBeNull();
  });

  it('is none where the machine was out before the run it was for', () => {
    expect(stand({ accepted, outFrom: clock(19.5), now: clock(21) }).question).toBeNull();
    expect(stand({ accepted, outFrom: clock(20.5), now: clock(21) }).question).not.toBeNull();
  });

  it('offers both times it may have gone in where a run has begun since', () => {
    const words = questionWords(stand({ accepted, now: clock(21) }), 'UTC')!;
    expect(words.yes.map(({ label }) => label)).toEqual(['Yes, before Round 4', 'Yes, after Round 5']);
    expect(words.yes[0]!.at).toBe(swap!.latestStart);
    expect(words.no).toBe('No, still 410');
  });

  it('is the latest one where two were missed', () => {
    const late = stand({ accepted, now: clock(25.4) });
    expect(late.question).toMatchObject({ from: on(410), to: on(430) });
  });

  it('never makes a word safer than it is without an accepted plan', () => {
    for (let hour = 17; hour < 27; hour += 0.25) {
      const now = clock(hour);
      const [without, having] = [stand({ now }), stand({ now, accepted })];
      for (const [run, plan] of without.plan.runs.entries())
        expect(having.plan.runs[run]!.ifKept).toEqual(plan.ifKept);
      expect(having.inNow).toEqual(without.inNow);
    }
  });
});
