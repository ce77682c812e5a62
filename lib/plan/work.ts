import { normaliseBox } from '@/lib/carb/box';
import { trimPositions } from '@/lib/carb/trim';
import { HOUR_MS, MINUTE_MS } from '@/lib/time/instant';
import { MOST_WORK, STEP_MINUTES } from './judgement';
import type { PlanProblem, PlanRequest } from './types';

type Asked = Pick<PlanRequest, 'machine' | 'runs' | 'options'>;

/** Jets times trim positions: no more settings than this are ever looked at for a machine. */
function settingsOf({ box, carburettors, trim }: Asked['machine']): number {
  const baselines = new Set(carburettors.map(({ main }) => main));
  return normaliseBox(box).length * baselines.size * trimPositions(trim).length;
}

/** Instants at which the runs are looked at. */
function instantsOf(runs: Asked['runs']): number {
  return runs.reduce(
    (sum, { start, end }) => sum + Math.ceil((end - start) / (STEP_MINUTES * MINUTE_MS)) + 1,
    0,
  );
}

/** What drawing the air of an instant takes, in settings graded there. Measured. */
const DRAWING = 30;

/**
 * How much there is to do for some machines: settings to be graded, at every instant of every run, in every draw. One
 * unit takes some ten nanoseconds at worst.
 */
export function workOf(requests: readonly Asked[]): number {
  return requests.reduce(
    (sum, { machine, runs, options }) =>
      sum + (settingsOf(machine) + DRAWING) * instantsOf(runs) * options.scenarios,
    0,
  );
}

/** Whether what is asked for in one go is more than can be waited for; null where it is not. */
export function workProblem(requests: readonly Asked[]): PlanProblem | null {
  if (workOf(requests) <= MOST_WORK) return null;
  return {
    code: 'too-much-at-once',
    machines: requests.length,
    settings: Math.max(...requests.map(({ machine }) => settingsOf(machine))),
    runHours: Math.max(...requests.map(({ runs }) => hoursOf(runs))),
  };
}

function hoursOf(runs: Asked['runs']): number {
  return runs.reduce((sum, { start, end }) => sum + (end - start), 0) / HOUR_MS;
}
