'use client';

import { useEffect, useMemo, useState } from 'react';
import type { Night } from '@/lib/night/night';
import { planLater } from '@/lib/plan/plan-later';
import type { Plan, PlanProblem } from '@/lib/plan/types';
import { asksTheSame } from '@/lib/planner/kept-plans';
import { pagePlanner } from '@/lib/planner/page-planner';
import { ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';

/** A night with the plan that was made from it, as of `now`: never the plan of another. */
export type PlannedAt = {
  readonly night: Night;
  /** The night as it was asked for. */
  readonly asked: Night;
  readonly now: Instant;
  readonly plan: Result<Plan, PlanProblem>;
};

/**
 * The night planned apart from the page. Until a newer one is planned the last one stays as it was; a plan that still
 * holds as the clock goes on is not made again, nor is one that was planned ahead. null until the first is there.
 */
export function usePlanned(night: Night | null, now: Instant | null): PlannedAt | null {
  const [shown, setShown] = useState<PlannedAt | null>(null);
  const [fault, setFault] = useState<unknown>(null);
  const current = useMemo(
    () => (night === null || now === null ? null : plannedAt(night, now, shown)),
    [night, now, shown],
  );
  const lacks = current === null;
  const asking = useSameQuestion(night);
  useEffect(() => {
    if (asking === null || now === null || !lacks) return;
    const { plan, cancel } = pagePlanner.ask({ ...asking.request, now });
    let left = false;
    plan.then((result) => {
      if (!left) setShown({ night: asking, asked: asking, now, plan: result });
    }, setFault);
    return () => {
      left = true;
      cancel();
    };
  }, [asking, now, lacks]);
  if (current !== null && current !== shown) setShown(current);
  // The nearest error boundary says it in words.
  if (fault !== null) throw fault;
  return current ?? shown;
}

/** The night that asked first: where its records were only kept meanwhile, the plan that is under way is the one wanted. */
function useSameQuestion(night: Night | null): Night | null {
  const [asking, setAsking] = useState(night);
  const isSame = useMemo(
    () =>
      night === asking || (night !== null && asking !== null && asksTheSame(night.request, asking.request)),
    [night, asking],
  );
  if (isSame) return asking;
  setAsking(night);
  return night;
}

/** What can be shown at once; null where it has to be planned. */
function plannedAt(night: Night, now: Instant, shown: PlannedAt | null): PlannedAt | null {
  const held = shown?.asked === night ? heldAt(shown, now) : null;
  if (held !== null) return held;
  const plan = pagePlanner.known({ ...night.request, now });
  if (plan === null) return null;
  if (shown?.plan !== plan || shown.now !== now) return { night, asked: night, now, plan };
  // The same question, asked of records that were only kept meanwhile: what was worked out from it need not be drawn again.
  const { machine, request } = shown.night;
  return { night: { ...night, machine, request }, asked: night, now, plan };
}

function heldAt(made: PlannedAt, now: Instant): PlannedAt | null {
  const { night, plan } = made;
  if (now === made.now) return made;
  // Why there is none has nothing to do with the clock.
  if (!plan.ok) return { ...made, now };
  const later = planLater({ ...night.request, now }, plan.value, made.now);
  return later === null ? null : { ...made, now, plan: ok(later) };
}
