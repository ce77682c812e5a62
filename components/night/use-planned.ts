'use client';

import { useEffect, useMemo, useState } from 'react';
import type { Night } from '@/lib/night/night';
import { planLater } from '@/lib/plan/plan-later';
import type { Plan, PlanProblem } from '@/lib/plan/types';
import { pagePlanner } from '@/lib/planner/page-planner';
import { ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';

/** A night with the plan that was made from it, as of `now`: never the plan of another. */
export type PlannedAt = {
  readonly night: Night;
  readonly now: Instant;
  readonly plan: Result<Plan, PlanProblem>;
};

/**
 * The night planned apart from the page. Until a newer one is planned the last one stays as it was; a plan that still
 * holds as the clock goes on is not made again. null until the first is there.
 */
export function usePlanned(night: Night | null, now: Instant | null): PlannedAt | null {
  const [made, setMade] = useState<PlannedAt | null>(null);
  const [shown, setShown] = useState<PlannedAt | null>(null);
  const [fault, setFault] = useState<unknown>(null);
  const current = useMemo(
    () => (made === null || made.night !== night || now === null ? null : heldAt(made, now)),
    [made, night, now],
  );
  const lacks = current === null;
  useEffect(() => {
    if (night === null || now === null || !lacks) return;
    const { plan, cancel } = pagePlanner.ask({ ...night.request, now });
    let left = false;
    plan.then((result) => {
      if (!left) setMade({ night, now, plan: result });
    }, setFault);
    return () => {
      left = true;
      cancel();
    };
  }, [night, now, lacks]);
  if (current !== null && current !== shown) setShown(current);
  // The nearest error boundary says it in words.
  if (fault !== null) throw fault;
  return current ?? shown;
}

function heldAt(made: PlannedAt, now: Instant): PlannedAt | null {
  const { night, plan } = made;
  // Why there is none has nothing to do with the clock.
  if (now === made.now || !plan.ok) return { ...made, now };
  const later = planLater({ ...night.request, now }, plan.value, made.now);
  return later === null ? null : { night, now, plan: ok(later) };
}
