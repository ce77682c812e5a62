import { normaliseBox, pieces } from '@/lib/carb/box';
import { MOST_RUNS } from './judgement';
import type { PlanProblem, PlanRequest } from './types';
import { workProblem } from './work';

/** Why no plan can be made; null where one can. */
export function planProblem(request: PlanRequest): PlanProblem | null {
  return runsProblem(request) ?? hoursProblem(request) ?? boxProblem(request) ?? workProblem([request]);
}

function runsProblem({ runs }: PlanRequest): PlanProblem | null {
  if (runs.length === 0) return { code: 'no-runs' };
  if (runs.length > MOST_RUNS) return { code: 'too-many-runs', limit: MOST_RUNS };
  const backwards = runs.findIndex(({ start, end }) => end < start);
  return backwards === -1 ? null : { code: 'run-ends-before-it-starts', run: backwards };
}

function hoursProblem({ runs, series }: PlanRequest): PlanProblem | null {
  const [first, last] = [series.hours[0], series.hours.at(-1)];
  if (first === undefined || last === undefined) return { code: 'no-hours' };
  const covered = runs.some(({ start, end }) => start >= first.at && end <= last.at);
  return covered ? null : { code: 'hours-do-not-cover-any-run', hoursStart: first.at, hoursEnd: last.at };
}

function boxProblem({ machine, fitted, made }: PlanRequest): PlanProblem | null {
  const carburettors = machine.carburettors.length;
  if (normaliseBox(machine.box).length === 0) return { code: 'empty-box' };
  if (pieces(machine.box) < carburettors) return { code: 'too-few-jets', carburettors };
  const settings = [...(fitted === null ? [] : [fitted]), ...made.map(({ setting }) => setting)];
  const odd = settings.find(({ mains }) => mains.length !== carburettors);
  return odd === undefined ? null : { code: 'setting-does-not-fit', mains: odd.mains.length, carburettors };
}
