import type { Air } from '@/lib/air/air';
import type { ReadingWorth } from '@/lib/plan/reading-worth';
import type { InNow, Plan, PlanRequest, RunPlan } from '@/lib/plan/types';
import type { Instant } from '@/lib/time/instant';
import { type Danger, dangersOf } from './danger';
import { type Job, jobOf } from './job';
import { type MixtureNow, mixtureNow } from './mixture';
import { type OpenSwap, openSwapOf } from './open-swap';
import { readingToAskFor } from './reading';

/**
 * What is true of one machine now and what to do: worked out once, read by everything that tells a person anything.
 * The plan it comes from starts from what is really in, so its risks are those of the jets that were told.
 */
export type Standing = {
  readonly now: Instant;
  readonly plan: Plan;
  readonly inNow: InNow;
  /** How what is in stands in the air of now; null where no hour says so. */
  readonly mixture: MixtureNow | null;
  /** The air that `mixture` is judged in. */
  readonly airNow: Air | null;
  /** An accepted swap that nobody confirmed; to be asked before anything else. */
  readonly question: OpenSwap | null;
  readonly dangers: readonly Danger[];
  readonly job: Job;
  /** The run to come with the highest risk on what the plan has in it; null where none is to come. */
  readonly worst: RunPlan | null;
  /** A reading to ask for now, and what it would tell; null where none is. */
  readonly reading: ReadingWorth | null;
};

export function standingOf(request: PlanRequest, plan: Plan): Standing {
  const { machine, now } = request;
  const judged = mixtureNow(machine, plan, now);
  return {
    now,
    plan,
    inNow: plan.inNow,
    mixture: judged?.mixture ?? null,
    airNow: judged?.air ?? null,
    question: openSwapOf(request, plan),
    dangers: dangersOf(plan),
    job: jobOf(plan, now),
    worst: worstOf(plan),
    reading: readingToAskFor(request, plan),
  };
}

function worstOf(plan: Plan): RunPlan | null {
  const planned = plan.runs.filter(({ state }) => state === 'planned');
  return planned.reduce<RunPlan | null>(
    (worst, run) => (worst === null || run.chanceOfLean > worst.chanceOfLean ? run : worst),
    null,
  );
}
