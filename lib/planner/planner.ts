import type { Plan, PlanProblem, PlanRequest } from '@/lib/plan/types';
import type { Result } from '@/lib/result/result';
import type { PlannerReply, PlannerTask } from './tasks';

/** Longer than the largest night takes on a slow phone: a worker that is silent for so long will not answer [ms]. */
const SILENCE_MS = 10_000;

type Planned = Result<Plan, PlanProblem>;

export type AskedPlan = {
  /** The same plan as `makePlan`; a fault of planning is thrown. */
  readonly plan: Promise<Planned>;
  /** Nobody waits for it any more; it may then never come. */
  readonly cancel: () => void;
};

/** Plans requests apart from the page where that can be. */
export type Planner = {
  readonly ask: (request: PlanRequest) => AskedPlan;
  /** Opens the worker before it is needed. */
  readonly wake: () => void;
  /** Whether a worker is there to plan: then a plan costs the page nothing. */
  readonly isApart: () => boolean;
};

/** What a planner needs of a worker. */
export type PlanningWorker = {
  readonly send: (task: PlannerTask) => void;
  readonly listen: (hear: (reply: PlannerReply) => void, fail: () => void) => void;
  readonly end: () => void;
};

type Waiting = {
  readonly request: PlanRequest;
  readonly resolve: (plan: Promise<Planned> | Planned) => void;
};

/** Loaded when it is needed: a page with a worker may do without. */
async function planInPlace(request: PlanRequest): Promise<Planned> {
  const { makePlan } = await import('@/lib/plan/make-plan');
  return makePlan(request);
}

/** `open` gives null, or throws, where no worker can be had; then, and once one fails, the same is planned in place. */
export function createPlanner(open: () => PlanningWorker | null): Planner {
  const waiting = new Map<number, Waiting>();
  let worker: PlanningWorker | null | undefined;
  let asked = 0;
  let silence: ReturnType<typeof setTimeout> | undefined;
  const giveUp = (): void => {
    clearTimeout(silence);
    worker?.end();
    worker = null;
    for (const { request, resolve } of waiting.values()) resolve(planInPlace(request));
    waiting.clear();
  };
  const listen = (): void => {
    clearTimeout(silence);
    if (waiting.size > 0) silence = setTimeout(giveUp, SILENCE_MS);
  };
  const hear = ({ number, plan }: PlannerReply): void => {
    const one = waiting.get(number);
    waiting.delete(number);
    listen();
    one?.resolve(plan ?? planInPlace(one.request));
  };
  const wake = (): void => {
    if (worker !== undefined) return;
    worker = opened(open);
    worker?.listen(hear, giveUp);
  };
  const send = (task: PlannerTask): void => {
    try {
      worker?.send(task);
    } catch {
      giveUp();
    }
  };
  return {
    wake,
    isApart: () => worker !== undefined && worker !== null,
    ask: (request) => {
      wake();
      if (worker === null) return { plan: planInPlace(request), cancel: () => undefined };
      asked += 1;
      const number = asked;
      const plan = new Promise<Planned>((resolve) => {
        waiting.set(number, { request, resolve });
      });
      send({ number, request });
      listen();
      return {
        plan,
        cancel: () => {
          if (waiting.delete(number)) send({ cancel: number });
          listen();
        },
      };
    },
  };
}

function opened(open: () => PlanningWorker | null): PlanningWorker | null {
  try {
    return open();
  } catch {
    return null;
  }
}
