import { makePlan } from '@/lib/plan/make-plan';
import type { Plan, PlanProblem, PlanRequest } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';

/** What the page asks of its worker; numbers count up. What is no longer wanted is left out if it has not begun. */
export type PlannerTask =
  | { readonly number: number; readonly request: PlanRequest }
  | { readonly cancel: number };

/** `plan` null: planning it threw. */
export type PlannerReply = { readonly number: number; readonly plan: Result<Plan, PlanProblem> | null };

/** The worker's own side of the line. */
export type TaskScope = {
  readonly addEventListener: (type: 'message', hear: (event: { readonly data: PlannerTask }) => void) => void;
  readonly postMessage: (reply: PlannerReply) => void;
};

/** Plans one request after the other; between two it hears what was cancelled. */
export function answerTasks(scope: TaskScope, plan = makePlan): void {
  const waiting = new Map<number, PlanRequest>();
  const next = (): void => {
    const [first] = waiting;
    if (first === undefined) return;
    const [number, request] = first;
    waiting.delete(number);
    scope.postMessage({ number, plan: resultOrNull(() => plan(request)) });
    setTimeout(next);
  };
  scope.addEventListener('message', ({ data }) => {
    if ('cancel' in data) {
      waiting.delete(data.cancel);
      return;
    }
    waiting.set(data.number, data.request);
    if (waiting.size === 1) setTimeout(next);
  });
}

function resultOrNull(plan: () => PlannerReply['plan']): PlannerReply['plan'] {
  try {
    return plan();
  } catch {
    return null;
  }
}
