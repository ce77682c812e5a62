import type { PlanWarning } from '@/lib/plan/types';
import { mostOf } from '@/lib/standing/danger';
import type { PlannedRacer } from './racer';

/** A racer whose box has no jet rich enough, or none lean enough, for some of the runs. */
export type Want = {
  readonly racerId: string;
  readonly side: 'richer' | 'leaner';
  /** Sorted runs of the plan. */
  readonly runs: readonly number[];
  /** For each carburettor: the smallest jet that exists and is safe in all of them; null where none is known. */
  readonly sizes: readonly number[] | null;
  /** The smallest of them in any run and carburettor; another's series may have one a little below it. */
  readonly least: number;
};

type NoJet = Extract<PlanWarning, { code: 'no-jet-rich-enough' | 'no-jet-lean-enough' }>;

const SIDES = [
  ['richer', 'no-jet-rich-enough'],
  ['leaner', 'no-jet-lean-enough'],
] as const;

function wantOn({ racer, plan }: PlannedRacer, [side, code]: (typeof SIDES)[number]): Want | null {
  const warnings = plan.warnings.filter((warning): warning is NoJet => warning.code === code);
  if (warnings.length === 0) return null;
  return {
    racerId: racer.id,
    side,
    runs: warnings.map(({ run }) => run),
    sizes: mostOf(warnings),
    least: Math.min(...warnings.flatMap(({ sizes }) => sizes ?? [])),
  };
}

/** Who lacks what, the most pressing first: lean engines before rich ones, then whose run comes first. */
export function wantsOf(planned: readonly PlannedRacer[]): readonly Want[] {
  const starts = new Map(planned.map(({ racer, plan }) => [racer.id, plan.sortedRuns]));
  const startOf = ({ racerId, runs }: Want): number => starts.get(racerId)?.[runs[0]!]?.start ?? 0;
  return SIDES.flatMap((side) =>
    planned.flatMap((each) => wantOn(each, side) ?? []).sort((a, b) => startOf(a) - startOf(b)),
  );
}
