import type { BoardNight } from '@/lib/contract/board';
import { planProblemPath } from '@/lib/contract/plan-from-json';
import type { ContractProblem } from '@/lib/contract/problem';
import type { HourSeries } from '@/lib/hours/series';
import { ok, type Result } from '@/lib/result/result';
import type { Instant } from '@/lib/time/instant';
import { type BoardBody, boardBody } from './board-to-json';
import { type BoardMachine, type BoardMemory, type BoardMessage, planBoard } from './plan-board';

type Given = {
  readonly memory: BoardMemory;
  readonly series: HourSeries;
  readonly now: Instant;
  /** The machine whose own people have just said what is in; null: nobody has. */
  readonly saidBy: string | null;
  /** Starts of the runs as first posted, by machine. */
  readonly firstStarts: Readonly<Record<string, readonly string[]>>;
  readonly postedAt: Instant;
};

/** A planning of a board as plain data, so that a thread can do it. */
export type PlannedPosted = {
  readonly body: BoardBody;
  readonly messages: readonly BoardMessage[];
  readonly memory: BoardMemory;
  /** When to plan again; null: never. */
  readonly look: Instant | null;
  /** Problems that no newer forecast will mend. */
  readonly lasting: readonly ContractProblem[];
};

/** Plans a posted night and writes its answer. */
export function planPosted(
  night: BoardNight,
  { memory, series, now, saidBy, firstStarts, postedAt }: Given,
): Result<PlannedPosted, readonly ContractProblem[]> {
  const planned = planBoard(night, { memory, series, now, saidBy });
  if (!planned.ok) return planned;
  const { machines, ...told } = planned.value;
  return ok({
    ...told,
    body: boardBody({ night, firstStarts, machines, series, postedAt, now }),
    lasting: lastingProblems(machines),
  });
}

function lastingProblems(machines: readonly BoardMachine[]): readonly ContractProblem[] {
  return machines.flatMap(({ problem }, i) =>
    problem === null || problem.code === 'no-hours' || problem.code === 'hours-do-not-cover-any-run'
      ? []
      : [{ path: planProblemPath(problem, ['machines', i]), reason: problem }],
  );
}
