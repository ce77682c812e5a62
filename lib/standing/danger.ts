import type { Plan, PlanWarning, RunPlan } from '@/lib/plan/types';

/**
 * Runs to come that are not to be raced on what the plan can put in, and why. `no-jet`: the box has none that would do;
 * `no-time`: it has one, and no gap is long enough to put it in.
 */
export type Danger = {
  readonly grade: 'lean' | 'drowned';
  readonly why: 'no-jet' | 'no-time';
  /** By sorted run. */
  readonly runs: readonly RunPlan[];
  /** With `no-jet`: the smallest jets that exist and would do in all of them, by carburettor; null: none is known. */
  readonly sizes: readonly number[] | null;
};

type NoJet = Extract<PlanWarning, { readonly sizes: readonly number[] | null }>;

/** True where a run must not be raced as planned. */
export function isDangerous({ state, grade }: Pick<RunPlan, 'state' | 'grade'>): boolean {
  return state === 'planned' && (grade === 'lean' || grade === 'drowned');
}

/** All dangers of a plan, lean ones first; empty where every run to come keeps its limits. */
export function dangersOf(plan: Plan): readonly Danger[] {
  const bad = plan.runs.filter(isDangerous);
  const lacking = new Map(
    plan.warnings
      .filter((warning): warning is NoJet => 'sizes' in warning)
      .map((warning) => [warning.run, warning]),
  );
  return (['lean', 'drowned'] as const).flatMap((grade) =>
    (['no-jet', 'no-time'] as const).flatMap((why): Danger[] => {
      const runs = bad.filter((run) => run.grade === grade && lacking.has(run.run) === (why === 'no-jet'));
      if (runs.length === 0) return [];
      return [{ grade, why, runs, sizes: mostOf(runs.flatMap(({ run }) => lacking.get(run) ?? [])) }];
    }),
  );
}

/** The most each carburettor asks for over several runs; null where one of them asks for what does not exist. */
export function mostOf(warnings: readonly NoJet[]): readonly number[] | null {
  const asked = warnings.map(({ sizes }) => sizes);
  const [first] = asked;
  if (first === undefined || first === null) return null;
  if (asked.some((sizes) => sizes === null)) return null;
  return first.map((_, i) => Math.max(...asked.map((sizes) => sizes?.[i] ?? 0)));
}
