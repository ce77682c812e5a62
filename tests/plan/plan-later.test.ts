import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makePlan } from '@/lib/plan/make-plan';
import { planLater } from '@/lib/plan/plan-later';
import type { PlanRequest } from '@/lib/plan/types';
import { expectOk } from '@/lib/result/result';
import { nightRequests, sharedSeries } from '@/lib/share/night-requests';
import { addMinutes, type Instant } from '@/lib/time/instant';
import { anyEvening, type Evening } from '@/tests/support/any-evening';

/** The question of an evening at another time; its hours from a forecast, or typed. */
function askedAt({ night, now }: Evening, { later, typed }: { later: number; typed: boolean }) {
  const series = expectOk(sharedSeries(night));
  const at = addMinutes(now, later);
  const [request] = expectOk(nightRequests(night, { series, now: at }));
  if (request === undefined) throw new Error('no machine');
  if (!typed) return request;
  return { ...request, series: { ...series, source: { ...series.source, issuedAt: null } } };
}

/** What decides a night, brute force: all that is compared with the time anywhere in it. */
const decidedBetween = ({ runs, options, now }: PlanRequest, before: Instant): boolean =>
  runs.some(({ start }) =>
    [start, addMinutes(start, -options.swapMinutes)].some((at) => before <= at && at < now),
  );

describe('a plan a little later', () => {
  it('is the plan that would be made then, or none where the night must be planned again', () => {
    let kept = 0;
    fc.assert(
      fc.property(
        anyEvening,
        fc.integer({ min: 1, max: 60 }),
        fc.boolean(),
        (evening, halfMinutes, typed) => {
          const first = askedAt(evening, { later: 0, typed });
          const plan = makePlan(first);
          if (!plan.ok) return;
          const request = askedAt(evening, { later: halfMinutes / 2, typed });
          const later = planLater(request, plan.value, first.now);
          if (later === null) return;
          kept += 1;
          expect(later).toEqual(expectOk(makePlan(request)));
        },
      ),
      { seed: 20270116, numRuns: 60 },
    );
    expect(kept).toBeGreaterThan(12);
  });

  it('is planned again only where a run or a swap for it is due, a gap is told in minutes, or typed hours count anew', () => {
    fc.assert(
      fc.property(anyEvening, fc.integer({ min: 1, max: 20 }), (evening, halfMinutes) => {
        const first = askedAt(evening, { later: 0, typed: false });
        const plan = makePlan(first);
        if (!plan.ok || plan.value.warnings.some(({ code }) => code === 'swap-does-not-fit')) return;
        const request = askedAt(evening, { later: halfMinutes / 2, typed: false });
        expect(planLater(request, plan.value, first.now) === null).toBe(decidedBetween(request, first.now));
      }),
      { seed: 20270116, numRuns: 40 },
    );
  });

  it('is the very same one where none of its swaps can begin yet', () => {
    fc.assert(
      fc.property(anyEvening, (evening) => {
        const first = askedAt(evening, { later: 0, typed: false });
        const plan = makePlan(first);
        if (!plan.ok) return;
        const request = askedAt(evening, { later: 0.5, typed: false });
        const later = planLater(request, plan.value, first.now);
        if (later === null || plan.value.swaps.some(({ windowStart }) => windowStart <= first.now)) return;
        expect(later).toBe(plan.value);
      }),
      { seed: 20270116, numRuns: 40 },
    );
  });

  it('is not known where the clock went back', () => {
    const evening = fc.sample(anyEvening, { seed: 7, numRuns: 1 })[0]!;
    const first = askedAt(evening, { later: 0, typed: false });
    const plan = expectOk(makePlan(first));
    expect(planLater(askedAt(evening, { later: -0.5, typed: false }), plan, first.now)).toBeNull();
  });
});
